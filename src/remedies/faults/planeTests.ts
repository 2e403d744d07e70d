/** Planes of all satellites in a design, and for each one transponder that shows whether it is there. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Plane } from "../../findings/missing.ts";
import { planeKey, wantedCarriers } from "../../findings/wanted.ts";
import { type Carrier, QUADRANTS } from "../../signal/carrier.ts";

export type PlaneTest = {
  readonly plane: Plane;
  /** The one in the middle of the plane: further from what an ageing cable or a wrong plate takes first. */
  readonly carrier: Carrier;
};

const known = new WeakMap<Evaluation, readonly PlaneTest[]>();

/** In the order of the dishes, and of each dish VL, VH, HL, HH; right-hand circular with V, left-hand with H. */
export function planeTests(evaluation: Evaluation): readonly PlaneTest[] {
  let tests = known.get(evaluation);
  if (!tests) {
    tests = evaluation.records
      .filter((r) => r.kind.family === "receive")
      .flatMap((source) => {
        const byPlane = new Map<string, { readonly plane: Plane; readonly carriers: Carrier[] }>();
        for (const { plane, carrier } of wantedCarriers(source, [source], "satellite")) {
          if (!plane) continue;
          const own = byPlane.get(planeKey(plane)) ?? { plane, carriers: [] };
          own.carriers.push(carrier);
          byPlane.set(planeKey(plane), own);
        }
        const ordered = [...byPlane.values()].sort((a, b) => placeOf(a.plane) - placeOf(b.plane));
        return ordered.flatMap(({ plane, carriers }) => {
          const sorted = carriers.sort((a, b) => a.airMHz - b.airMHz);
          const carrier = sorted[Math.floor(sorted.length / 2)];
          return carrier ? [{ plane, carrier }] : [];
        });
      });
    known.set(evaluation, tests);
  }
  return tests;
}

function placeOf({ polarisation, half, circular }: Plane): number {
  return QUADRANTS.indexOf(`${polarisation}${half === "low" ? "L" : "H"}`) + (circular ? 0.5 : 0);
}
