/** What can be turned to level a riser or a tree: taps, pads, gains, slopes, equalisers. */
import type { PartId } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { fieldMeta } from "../../parts/fields.ts";
import type { Service } from "../../signal/carrier.ts";
import { type Site, wayUp } from "../site.ts";

/** One option of one part and the values that it may take, lowest first. */
export type Knob = {
  readonly part: PartId;
  readonly option: string;
  readonly values: readonly number[];
  /** A gain or a slope is turned at the part as it hangs there; everything else is another part. */
  readonly isSetting: boolean;
};

/** Values that riser plates and taps come in [dB]; typical, from memory. */
const TAP_VALUES = [6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30];
/** Pads and equalisers [dB]; from memory. */
const PAD_VALUES = [0, 3, 6, 10, 12, 16, 20];
const EQUALISER_VALUES = [0, 6, 9, 12, 18];

const OPTIONS: Readonly<
  Record<string, readonly (readonly [option: string, values: readonly number[] | "steps"])[]>
> = {
  tap: [["tapLossDb", TAP_VALUES]],
  "outlet-through": [["tapLossDb", TAP_VALUES]],
  "outlet-end": [["lossDb", [1, 2, 4, 6, 8, 10, 12]]],
  attenuator: [["lossDb", PAD_VALUES]],
  equaliser: [["slopeDb", EQUALISER_VALUES]],
  "amp-masthead": [["gainDb", "steps"]],
  "amp-if": [
    ["gainDb", "steps"],
    ["slopeDb", "steps"],
  ],
  "amp-distribution": [
    ["gainDb", "steps"],
    ["slopeDb", "steps"],
  ],
};

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
    (OPTIONS[record.kind.kind] ?? []).flatMap(([option, values]): Knob[] => {
      const now = record.options[option];
      if (typeof now !== "number" || isRadioOnly(record, service, option)) return [];
      const steps = values === "steps" ? wholeSteps(record, option) : values;
      const all = [...new Set([...steps, now])].sort((a, b) => a - b);
      return [{ part: record.part.id, option, values: all, isSetting: record.kind.kind.startsWith("amp-") }];
    }),
  );
}

/** The gain of the UHF input says nothing about radio that has inputs of its own. */
function isRadioOnly(record: PartRecord, service: Service, option: string): boolean {
  return (
    record.kind.kind === "amp-distribution" &&
    record.options.inputs !== "one" &&
    (service === "fm" || service === "dab") &&
    option === "gainDb"
  );
}

function wholeSteps(record: PartRecord, option: string): readonly number[] {
  const schema = record.kind.options.shape[option];
  const { min = 0, max = 0 } = (schema && fieldMeta(schema)) ?? {};
  return Array.from({ length: Math.floor(max) - Math.ceil(min) + 1 }, (_, i) => Math.ceil(min) + i);
}
