/** Too much or too little level: pads, gains, line amplifiers. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Finding } from "../../findings/finding.ts";
import { kindOf } from "../../parts/catalogue.ts";
import {
  describedOptions,
  doesCount,
  metresOf,
  optionMeaning,
  standardValues,
} from "../../parts/meanings.ts";
import type { Service } from "../../signal/carrier.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { isFed, type Step, wayUp } from "../site.ts";
import { curePlaceOf } from "./places.ts";
import { partAway } from "./wider.ts";

/** Further inside the limit than the limit itself, so that a warm day does not undo it [dB]. */
const SPARE_DB = 2;

/** What a receiver is lifted by that misses carriers, of which the finding only says how many [dB]. */
const LIFT_DB = 6;

/** How far a finding lies beyond its limit, and to which side [dB]; 0 where it is not about level or noise. */
export function excessDb(finding: Finding): number {
  if (/^dB/.test(finding.unit ?? "")) return (finding.value ?? 0) - (finding.limit ?? 0);
  return isWeak(finding) ? -LIFT_DB : 0;
}

/** Whether level or C/N would help: a carrier that is drowned or stopped needs something else. */
export function isWeak(finding: Finding): boolean {
  if (finding.rule === "low-carrier-to-noise") return true;
  if ("missing" in finding.facts) return finding.facts.missing.reason.kind === "noisy";
  return finding.at.side === "too little";
}

/** The smallest pad that is sold and takes so much. */
function padFor(db: number): number | undefined {
  const kind = kindOf("attenuator");
  const key = kind && optionMeaning(kind, "chosen loss");
  return kind && key ? standardValues(kind, key).find((pad) => pad >= db) : undefined;
}

/** A pad in the line before a socket or receiver that gets too much, or before an overloaded amplifier. */
export const padBefore: Idea = (site, finding) => {
  const over = excessDb(finding);
  const lossDb = over > 0 ? padFor(over + 1) : undefined;
  const place = curePlaceOf(site, finding);
  if (lossDb === undefined || !place) return [];
  const { part, input } = place;
  const end = part.joined[input];
  const before = end && site.evaluation.record(end[0]);
  if (!before) return [];
  const dcPass = isFed(before, end[1]);
  return [
    candidate("pad", [part.part.id, input, lossDb], { db: lossDb, overDb: over }, (design) => {
      const d = draft(design);
      d.insert("attenuator", { lossDb, dcPass }, [part.part.id, input]);
      return d.result();
    }),
  ];
};

/** An attenuator that is there already, with another value. */
export const padValue: Idea = (site, finding) => {
  const over = excessDb(finding);
  const place = curePlaceOf(site, finding);
  if (!place || over <= 0) return [];
  const way = wayUp(site, [place.part.part.id, place.input], place.service);
  return way.flatMap(({ record }): readonly Candidate[] => {
    const key = record.kind.trade.job === "pad" ? optionMeaning(record.kind, "chosen loss") : undefined;
    const from = key === undefined ? undefined : record.options[key];
    if (key === undefined || typeof from !== "number") return [];
    const { id } = record.part;
    return standardValues(record.kind, key)
      .filter((value) => value >= from + over)
      .slice(0, 3)
      .map((to) =>
        candidate("pad-value", [id, to], { option: key, from, to }, (design) => {
          const d = draft(design);
          d.set(id, { [key]: to });
          return d.result();
        }),
      );
  });
};

/** An amplifier that is not needed, taken out of the line. */
export const amplifierAway: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  if (!place || excessDb(finding) <= 0) return [];
  const way = wayUp(site, [place.part.part.id, place.input], place.service).map((s) => s.record);
  return [place.part, ...way]
    .filter(({ kind }) => kind.inline && kind.trade.job === "amplifier")
    .map(({ part }) => candidate("amplifier-away", [part.id], {}, partAway(part.id)));
};

/** Options by which the gain of a part is set, for a service. */
function gainOption(record: PartRecord, input: string | null, service: Service): string | undefined {
  const { kind, options } = record;
  const radio = service === "fm" || service === "dab";
  const ownInput = record.ports.some((p) => p.id === input && p.role === "band");
  const beside = service === "satellite" ? undefined : optionMeaning(kind, "terrestrial gain");
  const key =
    (radio && ownInput ? optionMeaning(kind, "radio gain") : undefined) ??
    optionMeaning(kind, "gain") ??
    beside;
  const meta = key === undefined ? undefined : describedOptions(kind).get(key);
  return meta && doesCount(meta, options) ? key : undefined;
}

/** Gains on the way, turned so that the finding comes inside its limit. */
export const otherGain: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  const over = excessDb(finding);
  if (!place || over === 0) return [];
  const isOverload = finding.rule === "overload";
  const way = wayUp(site, [place.part.part.id, place.input], place.service);
  const own: Step = { record: place.part, in: place.input, out: finding.wires[0]?.split(/[.>]/)[1] ?? "out" };
  return (isOverload ? [own, ...way] : way).flatMap((step): Candidate[] => {
    const option = gainOption(step.record, step.in, place.service);
    const now = option === undefined ? undefined : step.record.options[option];
    if (option === undefined || typeof now !== "number") return [];
    const db = over > 0 ? -Math.ceil(over + 1) : Math.ceil(-over + SPARE_DB);
    const id = step.record.part.id;
    return [
      candidate("gain", [id, option, now + db], { option, byDb: db, toDb: now + db }, (design) => {
        const d = draft(design);
        d.set(id, { [option]: now + db });
        return d.result();
      }),
    ];
  });
};

/** An amplifier for satellite IF before the longest cable of a line that is too weak. */
export const lineAmplifier: Idea = (site, finding) => {
  const place = curePlaceOf(site, finding);
  const under = -excessDb(finding);
  if (place?.service !== "satellite" || under <= 0) return [];
  const way = wayUp(site, [place.part.part.id, place.input], "satellite");
  const metres = ({ record }: Step) => metresOf(record.kind, record.options) ?? 0;
  const longest = way.filter((step) => metres(step) > 0).sort((a, b) => metres(b) - metres(a))[0];
  if (!longest?.in) return [];
  const id = longest.record.part.id;
  const shared = longest.record.inputs.in?.bands.some((b) => b.origin.service !== "satellite") ?? false;
  const wide =
    longest.record.inputs.in?.bands.some((b) => b.origin.service === "satellite" && b.grid.fromMHz < 900) ??
    false;
  const gainDb = Math.min(20, Math.max(8, Math.ceil(under + SPARE_DB + 1)));
  return [
    candidate("line-amplifier", [id, gainDb], { db: gainDb }, (design) => {
      const d = draft(design);
      const range = wide ? { fromMHz: 290, toMHz: 2350 } : {};
      d.insert("amp-if", { ...range, gainDb, below: shared ? "passed" : "stopped" }, [id, "in"]);
      return d.result();
    }),
  ];
};
