/** Splitters that feed combiners, over and over: one signal meets itself by 2, 4, 8 … ways. */
import type { Design, Part, Wire } from "../src/design/design.ts";
import { kindOf } from "../src/parts/catalogue.ts";

/** `stages` times a splitter of so many ways with all its outputs on a combiner; one aerial, one receiver. */
export function ladder(stages: number, ways = 2): Design {
  const parts: Part[] = [];
  const wires: Wire[] = [];
  const put = (id: string, kindKey: string, options: Record<string, unknown> = {}) => {
    const kind = kindOf(kindKey);
    if (!kind) throw new Error(`no kind ${kindKey}`);
    const n = parts.length;
    const at = [(n % 20) * 300, Math.floor(n / 20) * 160] as const;
    parts.push({ id, kind: kindKey, label: id, options: kind.options.parse(options), at });
  };
  put("aerial", "aerial-uhf");
  let above: Wire["from"] = ["aerial", "out"];
  for (let n = 1; n <= stages; n++) {
    put(`split${n}`, "splitter", { ways });
    put(`join${n}`, "combiner", { ways });
    wires.push({ from: above, to: [`split${n}`, "in"] });
    for (let way = 1; way <= ways; way++)
      wires.push({ from: [`split${n}`, `out${way}`], to: [`join${n}`, `in${way}`] });
    above = [`join${n}`, "out"];
  }
  put("tv", "receiver-tv");
  wires.push({ from: above, to: ["tv", "in"] });
  return { title: `Ladder of ${stages} stages`, parts, wires };
}
