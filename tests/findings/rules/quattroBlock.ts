/** A quattro LNB on a dish, a multiswitch and a receiver, for tests of what stands on which input. */
import type { Design } from "../../../src/design/design.ts";
import { draw, type Sketch } from "../../draw.ts";

/** `trunks` joins LNB "l" and multiswitch "u"; parts of `more` come in addition, or in the place of these. */
export function quattroBlock(trunks: string, more: Sketch = {}): Design {
  return draw(
    {
      r: ["receiver-sat"],
      u: ["multiswitch", { terrestrial: false }],
      l: ["lnb-quattro"],
      k: ["dish"],
      ...more,
    },
    `k.sky > l.sky, ${trunks}, u.out1 > r.sat`,
  );
}

/** The same with two dishes: LNB "l" for the first satellite of the multiswitch, "n" for the second. */
export function twoSatellites(trunks: string): Design {
  return draw(
    {
      r: ["receiver-sat"],
      u: ["multiswitch", { terrestrial: false, satelliteInputs: "8" }],
      n: ["lnb-quattro"],
      l: ["lnb-quattro"],
      j: ["dish", { orbitalPositionDegE: 12 }],
      k: ["dish"],
    },
    `k.sky > l.sky, j.sky > n.sky, ${trunks}, u.out1 > r.sat`,
  );
}
