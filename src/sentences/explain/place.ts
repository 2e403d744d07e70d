/** What an explanation says of a socket or an input whose levels are judged. */

import { keptLimits, type Limits, limitsFor } from "../../findings/limits.ts";
import { type CarrierFigures, type Heard, heardAt, type Place, placesOf } from "../../findings/places.ts";
import type { Band } from "../../signal/band.ts";
import { isLive } from "../../signal/readout.ts";
import { numeral } from "../../words/numbers.ts";
import { partName } from "../phrases.ts";
import type { ToldFinding } from "../ruleWords.ts";
import {
  type MarkKind,
  markCarriers,
  pictureOf,
  type SpectrumPicture,
  spectrumAt,
  spotOf,
} from "./picture.ts";

/** The place that a finding speaks of. */
export function placeOfFinding({ finding, record, evaluation }: ToldFinding): Place | undefined {
  if (!record) return undefined;
  const kindAt = (port: string) => evaluation.record(record.joined[port]?.[0] ?? "")?.kind;
  return placesOf({ record, kindAt }).find((place) => place.port === finding.at.port);
}

/** "the TV socket of ⟦plate⟧" */
export function whereOf({ finding, record }: ToldFinding): string {
  const { part, port } = finding.at;
  const name = partName(part);
  const own = record?.ports.find((p) => p.id === port);
  if (!record || !own) return name;
  if (own.side === "out") return `the ${own.label} socket of ${name}`;
  const inputs = record.kind.reception?.(record.options).inputs.length ?? 0;
  return inputs > 1 ? `the input ${own.label} of ${name}` : `the input of ${name}`;
}

/** The judged carriers there, in rising frequency. */
export function heardThere(facts: ToldFinding): readonly Heard[] {
  const place = placeOfFinding(facts);
  const { service } = facts.finding.at;
  if (!place || !service) return [];
  return [...heardAt(place, service, facts.profile)].sort((a, b) => a.centreMHz - b.centreMHz);
}

/** "C25 (506 MHz)" */
export function tuned(c: Pick<CarrierFigures, "name" | "centreMHz">): string {
  return `${c.name} (${numeral(c.centreMHz)} MHz)`;
}

/** How the carriers that fail are marked; `withLimit`: their limit is drawn across. */
export type PlaceLook = { readonly kind: MarkKind; readonly label: string; readonly withLimit?: boolean };

/** Picture of the place with the carriers that fail marked, and the limit across them. */
export function pictureOfPlace(
  facts: ToldFinding,
  look: PlaceLook,
  fails: (band: Band, i: number, limits: Limits) => boolean,
): SpectrumPicture | null {
  const spot = spotOf(facts);
  if (!spot) return null;
  const { finding, profile } = facts;
  const { kind, label, withLimit } = look;
  const marks = markCarriers(
    spectrumAt(facts, spot),
    (band, i) => {
      const mode = band.grid.plan[band.grid.index[i] ?? 0]?.mode ?? "";
      const limits = limitsFor(profile, band.origin.service, mode, band.grid.required[i]);
      return (
        band.origin.service === finding.at.service &&
        isLive(band, i) &&
        !!limits &&
        fails(band, i, keptLimits(limits, profile))
      );
    },
    { kind, label, ...(withLimit && finding.limit !== undefined ? { levelDbuv: finding.limit } : {}) },
  );
  return pictureOf(facts, spot, marks);
}
