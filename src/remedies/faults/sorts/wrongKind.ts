/** A part of another kind in the place of the right one: converters and plates. */
import type { Part } from "../../../design/design.ts";
import { quoted } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { asKind } from "../change.ts";
import type { Fault, FaultType } from "../fault.ts";
import { makeFault, type Sort } from "./sort.ts";

type Options = Readonly<Record<string, unknown>>;
type Substitute = readonly [kind: string, options?: Options];

/** What is taken for what: they look alike in the hand. Common practice, no source. */
const CONVERTERS: Readonly<Record<string, readonly Substitute[]>> = {
  "lnb-universal": [["lnb-wideband"], ["lnb-quattro"], ["lnb-stacked"]],
  "lnb-quattro": [["lnb-universal", { outputs: "4", commonMa: 140 }], ["lnb-wideband"]],
  "lnb-wideband": [["lnb-universal", { outputs: "2" }]],
  "lnb-stacked": [["lnb-universal"]],
};

const PLATES: Readonly<Record<string, readonly Substitute[]>> = {
  "outlet-sat": [["outlet-tv"], ["outlet-diplexed"]],
  "outlet-sat-twin": [["outlet-quad"]],
  "outlet-tv": [["outlet-diplexed"], ["outlet-through"]],
  "outlet-diplexed": [["outlet-tv"], ["outlet-triplexed"]],
  "outlet-triplexed": [["outlet-diplexed"], ["outlet-tv"]],
  "outlet-quad": [["outlet-triplexed"], ["outlet-sat-twin"]],
  "outlet-through": [["outlet-end"], ["outlet-tv"]],
  "outlet-end": [["outlet-through"], ["outlet-tv"]],
};

export const wrongKindFaults: Sort = (design) =>
  design.parts.flatMap((part) => [
    ...substitutes(part, "wrong-converter", CONVERTERS),
    ...substitutes(part, "wrong-plate", PLATES),
  ]);

function substitutes(
  part: Part,
  type: FaultType,
  table: Readonly<Record<string, readonly Substitute[]>>,
): Fault[] {
  return (table[part.kind] ?? []).map(([key, options]) =>
    makeFault(type, {
      key: `${part.id}=${key}`,
      title: `${quoted(part)} is a part of the kind “${kindOf(key)?.name ?? key}”, not “${kindOf(part.kind)?.name ?? part.kind}”.`,
      parts: [part.id],
      // The line of a riser does not go on from a socket: where nothing takes it, it hangs loose.
      apply: (d) =>
        asKind(d, part.id, key, options, part.kind === "outlet-through" ? "falls away" : "in order"),
    }),
  );
}
