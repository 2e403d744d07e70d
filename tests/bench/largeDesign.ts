/** A block of flats of any size for benchmarks: one head-end, then flats with two rooms each. */
import type { Design, Part, Wire } from "../../src/design/design.ts";
import { kindOf } from "../../src/parts/catalogue.ts";

/** A design of at least `size` parts, in the manner of a large block: multiswitches, drops, plates, receivers. */
export function largeDesign(size: number): Design {
  const parts: Part[] = [];
  const wires: Wire[] = [];
  const put = (id: string, kindKey: string, options: Record<string, unknown> = {}) => {
    const kind = kindOf(kindKey);
    if (!kind) throw new Error(`no kind ${kindKey}`);
    const n = parts.length;
    parts.push({
      id,
      kind: kindKey,
      label: id,
      options: kind.options.parse(options),
      at: [(n % 40) * 376, Math.floor(n / 40) * 120],
    });
  };
  const join = (from: readonly [string, string], to: readonly [string, string]) => wires.push({ from, to });

  for (let block = 0; parts.length < size; block++) {
    const b = (name: string) => `${name}_${block}`;
    put(b("dish"), "dish", { diameterM: 1 });
    put(b("lnb"), "lnb-quattro");
    put(b("uhf"), "aerial-uhf");
    put(b("amp"), "amp-distribution", { gainDb: 20 });
    put(b("ms"), "multiswitch", { outputs: 16 });
    join([b("dish"), "sky"], [b("lnb"), "sky"]);
    join([b("uhf"), "out"], [b("amp"), "in"]);
    join([b("amp"), "out"], [b("ms"), "ter"]);
    for (const q of ["vl", "vh", "hl", "hh"]) {
      put(b(`trunk_${q}`), "cable", { lengthM: 10, grade: "copper-1.25" });
      join([b("lnb"), q], [b(`trunk_${q}`), "in"]);
      join([b(`trunk_${q}`), "out"], [b("ms"), q]);
    }
    for (let flat = 1; flat <= 16 && parts.length < size; flat++) {
      const f = (name: string) => b(`${name}_${flat}`);
      put(f("drop"), "cable", { lengthM: 8 + 2.5 * flat });
      put(f("plate"), "outlet-diplexed");
      put(f("tv"), "receiver-tv");
      put(f("sat"), "receiver-sat", { polarisation: flat % 2 ? "H" : "V", half: flat % 3 ? "low" : "high" });
      join([b("ms"), `out${flat}`], [f("drop"), "in"]);
      join([f("drop"), "out"], [f("plate"), "in"]);
      join([f("plate"), "tv"], [f("tv"), "in"]);
      join([f("plate"), "sat"], [f("sat"), "sat"]);
    }
  }
  return { title: `Large block, ${parts.length} parts`, parts, wires };
}
