/** What fails, on the plan: the way from each culprit to its receivers, in lines and fills that tell without colour too. */
import { type Design, wireId } from "../../design/design.ts";
import { useApp } from "../../store/app.ts";
import { useCulprits, useFailingWays } from "../../store/hooks.ts";
import { boxOf } from "./boxes.ts";
import { boxPath, wirePath } from "./PlanDrawing.tsx";

export function PlanFailure() {
  const evaluation = useApp((s) => s.evaluation);
  const verdicts = useApp((s) => s.report.verdicts);
  const { wires } = useFailingWays();
  const culprits = useCulprits();
  const { design } = evaluation;
  const failing = new Set(
    verdicts.filter((v) => v.role === "receiver" && v.state === "fails").map((v) => v.part),
  );
  const ways = design.wires.filter((wire) => wires.has(wireId(wire)));
  return (
    <>
      <path className="plan-failing-way" d={ways.map((wire) => wirePath(evaluation, wire)).join("")} />
      <path className="plan-culprit" d={boxesPath(design, (id) => culprits.get(id) === "error")} />
      <path className="plan-failing" d={boxesPath(design, (id) => failing.has(id))} />
      <path className="plan-cross" d={crossesPath(design, (id) => failing.has(id))} />
    </>
  );
}

function boxesPath(design: Design, has: (id: string) => boolean): string {
  return design.parts
    .filter((part) => has(part.id))
    .map((part) => boxPath(boxOf(design, part)))
    .join("");
}

/** A cross in the middle of each box, half as high as it. */
function crossesPath(design: Design, has: (id: string) => boolean): string {
  return design.parts
    .filter((part) => has(part.id))
    .map((part) => {
      const { x, y, width, height } = boxOf(design, part);
      const arm = height / 4;
      const left = x + width / 2 - arm;
      const top = y + height / 2 - arm;
      return `M${left} ${top}l${2 * arm} ${2 * arm}m0 ${-2 * arm}l${-2 * arm} ${2 * arm}`;
    })
    .join("");
}
