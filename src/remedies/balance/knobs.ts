/** What can be turned to level a riser or a tree: taps, pads, gains, slopes, equalisers. */
import type { PartId } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import {
  describedOptions,
  onSiteOf,
  optionMeaning,
  optionsMeaning,
  standardValues,
} from "../../parts/meanings.ts";
import type { Service } from "../../signal/carrier.ts";
import { type Site, wayUp } from "../site.ts";

/** One option of one part and the values that it may take, lowest first. */
export type Knob = {
  readonly part: PartId;
  readonly option: string;
  readonly values: readonly number[];
  /** A gain or a slope is turned at the part as it hangs there; everything else is another part. */
  readonly isSetting: boolean;
  readonly isGain: boolean;
};

/** What is chosen to level a line; an insertion loss comes with a part. */
const LEVELLING = ["gain", "slope", "tap loss", "chosen loss"] as const;

/** Knobs on the ways to some places, those nearest to the source first. */
export function knobsOf(
  site: Site,
  places: readonly { readonly part: PartRecord; readonly input: string }[],
  service: Service,
): readonly Knob[] {
  const records = new Map<PartId, PartRecord>();
  for (const { part, input } of places) {
    for (const step of [...wayUp(site, [part.part.id, input], service)].reverse())
      records.set(step.record.part.id, step.record);
    records.set(part.part.id, part);
  }
  return [...records.values()].flatMap((record) =>
    optionsMeaning(record.kind, ...LEVELLING).flatMap((option): Knob[] => {
      const now = record.options[option];
      const values = standardValues(record.kind, option);
      if (typeof now !== "number" || values.length === 0 || isTvOnly(record, service, option)) return [];
      // A pad or an equaliser can be left out; a plate cannot.
      const none = record.kind.inline && describedOptions(record.kind).get(option)?.min === 0 ? [0] : [];
      const all = [...new Set([...none, ...values, now])].sort((a, b) => a - b);
      const isSetting = onSiteOf(record.kind, option) === "setting";
      const isGain = option === optionMeaning(record.kind, "gain");
      return [{ part: record.part.id, option, values: all, isSetting, isGain }];
    }),
  );
}

/** The gain of the UHF input says nothing about radio that has inputs of its own. */
function isTvOnly(record: PartRecord, service: Service, option: string): boolean {
  return (
    (service === "fm" || service === "dab") &&
    option === optionMeaning(record.kind, "gain") &&
    record.ports.some((p) => p.side === "in" && p.role === "band")
  );
}
