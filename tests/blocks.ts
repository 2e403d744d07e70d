/** Blocks of flats drawn by loops: a riser of taps, floors of multiswitches. Every flat has a plate and receivers of its own. */
import type { Sketch } from "./draw.ts";

export type Block = readonly [parts: Sketch, wires: string];
type Of = Readonly<Record<string, unknown>>;

/** Flats 1 to n. */
const flats = (n: number): readonly number[] => Array.from({ length: n }, (_, k) => k + 1);

const TV = "receiver-tv";
const cable = (lengthM: number, more: Of = {}) => ["cable", { lengthM, ...more }] as const;

/**
 * A riser below `from`: 12 m of cable (`r1`) to the first tap, 3 m from tap to tap, from each 8 m to the plate of a flat.
 * Tap `t1`, plate `p1`, set `tv1` belong to the first flat from above; `end` closes the last tap unless `isOpen`.
 */
export function tapRiser(
  tapsDb: readonly number[],
  {
    from = "launch.out",
    cableOf = {},
    isOpen = false,
  }: { from?: string; cableOf?: Of; isOpen?: boolean } = {},
): Block {
  const parts: Record<string, Sketch[string]> = isOpen ? {} : { end: ["load"] };
  const wires: string[] = [];
  tapsDb.forEach((tapLossDb, k) => {
    const n = k + 1;
    parts[`r${n}`] = cable(k === 0 ? 12 : 3, cableOf);
    parts[`t${n}`] = ["tap", { tapLossDb }];
    parts[`d${n}`] = cable(8, cableOf);
    parts[`p${n}`] = ["outlet-tv", { dwelling: `Flat ${n}` }];
    parts[`tv${n}`] = [TV];
    wires.push(
      `${k === 0 ? from : `t${k}.out`} > r${n}.in`,
      `r${n}.out > t${n}.in, t${n}.tap1 > d${n}.in, d${n}.out > p${n}.in, p${n}.tv > tv${n}.in`,
    );
  });
  if (!isOpen) wires.push(`t${tapsDb.length}.out > end.in`);
  return [parts, wires.join(", ")];
}

/** An aerial with 8 m of cable into a launch amplifier. */
export const launch = (levelDbuv: number, amp: Of): Block => [
  { uhf: ["aerial-uhf", { levelDbuv }], down: cable(8), launch: ["amp-distribution", amp] },
  "uhf.out > down.in, down.out > launch.in",
];

const QUADRANTS = ["vl", "vh", "hl", "hh"] as const;
const TRUNKS = [...QUADRANTS, "ter"] as const;

/**
 * Floors of cascaded multiswitches `m1`, `m2`, … from above, with so many flats each; `ahead` is the part whose outputs feed the
 * first of them, by trunk. 15 m of cable lead there, 4 m from floor to floor, 11, 14, 17 … m to the flats of a floor.
 */
export function floors(
  count: number,
  perFloor: number,
  ahead: (trunk: string) => string,
  options: (floor: number) => Of = () => ({}),
): Block {
  const parts: Record<string, Sketch[string]> = {};
  const wires: string[] = [];
  for (const floor of flats(count)) {
    parts[`m${floor}`] = ["multiswitch", { outputs: perFloor, cascade: true, ...options(floor) }];
    for (const trunk of TRUNKS) {
      const run = `r${floor}${trunk}`;
      parts[run] = cable(floor === 1 ? 15 : 4);
      wires.push(`${floor === 1 ? ahead(trunk) : `m${floor - 1}.${trunk}-thru`} > ${run}.in`);
      wires.push(`${run}.out > m${floor}.${trunk}`);
      if (floor < count) continue;
      parts[`e${trunk}`] = ["load"];
      wires.push(`m${floor}.${trunk}-thru > e${trunk}.in`);
    }
    for (const n of flats(perFloor)) {
      const flat = (floor - 1) * perFloor + n;
      parts[`d${flat}`] = cable(8 + 3 * n);
      parts[`p${flat}`] = ["outlet-diplexed", { dwelling: `Flat ${flat}` }];
      parts[`rx${flat}`] = ["receiver-sat", { polarisation: flat % 2 === 0 ? "H" : "V" }];
      parts[`tv${flat}`] = [TV];
      wires.push(
        `m${floor}.out${n} > d${flat}.in, d${flat}.out > p${flat}.in, p${flat}.sat > rx${flat}.sat, p${flat}.tv > tv${flat}.in`,
      );
    }
  }
  return [parts, wires.join(", ")];
}

/** A dish of 1 m with a quattro LNB, and an aerial. */
export const roof = (levelDbuv: number): Block => [
  { dish: ["dish", { diameterM: 1 }], lnb: ["lnb-quattro"], uhf: ["aerial-uhf", { levelDbuv }] },
  "dish.sky > lnb.sky",
];

/** A trunk amplifier behind the roof's parts. */
export const trunkAmplifier = (options: Of): Block => [
  { amp: ["amp-trunks", options] },
  `${QUADRANTS.map((q) => `lnb.${q} > amp.${q}`).join(", ")}, uhf.out > amp.ter`,
];

export const joined = (...blocks: readonly Block[]): Block => [
  Object.assign({}, ...blocks.map(([parts]) => parts)),
  blocks.map(([, wires]) => wires).join(", "),
];
