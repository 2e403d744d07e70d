/** Where things lie on the diagram of a supply: volts upwards, the roof at the left as on the canvas. */
import { type ScaleLinear, type ScalePoint, scaleLinear, scalePoint } from "d3-scale";
import { line } from "d3-shape";
import type { SupplyStep } from "../../../findings/walk/supply.ts";
import { NAME_LINE_PX, nameLength } from "../origin/columns.ts";

export const SUPPLY_EDGE = { left: 132, right: 40, top: 22, bottom: 26 } as const;

/** "switch": above it a converter takes a request as horizontal. "needs": below it the part does not work. */
export type VoltsBound = { readonly name: "switch" | "needs"; readonly volts: number; readonly at: number };

export type SupplyDiagramShape = {
  readonly x: ScalePoint<number>;
  readonly y: ScaleLinear<number, number>;
  /** Where the volts end and the numbers of the parts begin [px]. */
  readonly bottom: number;
  /** Letters of a name that fit under a number; 0 where names are not shown. */
  readonly nameLength: number;
  /** Volts for a horizontal and for a vertical request; one line where both are alike. */
  readonly curves: readonly { readonly name: "horizontal" | "vertical" | "plain"; readonly path: string }[];
};

export function supplyDiagram(
  branch: readonly SupplyStep[],
  bounds: readonly VoltsBound[],
  size: { readonly width: number; readonly height: number },
): SupplyDiagramShape {
  const x = scalePoint<number>()
    .domain(branch.map((_, n) => n))
    .range([size.width - SUPPLY_EDGE.right, SUPPLY_EDGE.left])
    .padding(0.35);
  const letters = nameLength(x.step());
  const bottom = size.height - SUPPLY_EDGE.bottom - (letters > 0 ? NAME_LINE_PX : 0);
  const highest = Math.max(10, ...branch.map((s) => s.volts18), ...bounds.map((b) => b.volts));
  const y = scaleLinear()
    .domain([0, Math.ceil((highest + 1) / 5) * 5])
    .range([bottom, SUPPLY_EDGE.top]);
  const path = (volts: (step: SupplyStep) => number) =>
    line<SupplyStep>()
      .x((_, n) => x(n) ?? 0)
      .y((step) => y(volts(step)))([...branch]) ?? "";
  const isPlain = branch.every((s) => s.volts13 === s.volts18);
  return {
    x,
    y,
    bottom,
    nameLength: letters,
    curves: isPlain
      ? [{ name: "plain", path: path((s) => s.volts) }]
      : [
          { name: "vertical", path: path((s) => s.volts13) },
          { name: "horizontal", path: path((s) => s.volts18) },
        ],
  };
}

/** What has to be met on the way: the least volts of the part that is fed, and the thresholds of switches. */
export function voltsBounds(
  branch: readonly SupplyStep[],
  thresholdAt: (step: SupplyStep) => number | null,
): readonly VoltsBound[] {
  return branch.flatMap((step, at): VoltsBound[] => {
    const threshold = thresholdAt(step);
    return [
      ...(threshold === null ? [] : [{ name: "switch" as const, volts: threshold, at }]),
      ...(step.needsVolts === undefined ? [] : [{ name: "needs" as const, volts: step.needsVolts, at }]),
    ];
  });
}
