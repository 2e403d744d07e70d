/**
 * A whole design as one small drawing: a box for each part, a line for each wire, one path for each colour.
 * A thousand parts cost some twenty elements. It serves as the map, and as the canvas itself while more is
 * in view than cards could be drawn for.
 */
import { memo } from "react";
import type { Design, PortRef, Wire } from "../../design/design.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { boxOf, portPoint } from "./boxes.ts";
import type { Box } from "./layout.ts";
import { wireSummary } from "./wireSummary.ts";

export const PlanDrawing = memo(function PlanDrawing({ evaluation }: { readonly evaluation: Evaluation }) {
  const plan = planOf(evaluation);
  return (
    <>
      {[...plan.wires].map(([colour, d]) => (
        <path key={colour} className="plan-wire" d={d} style={{ stroke: colour }} />
      ))}
      {[...plan.cards].map(([family, d]) => (
        <path key={family} className="plan-card" data-family={family} d={d} />
      ))}
      <path className="plan-mark" d={plan.marks} />
    </>
  );
});

/** A straight line along a wire; empty where one of its ports is missing. */
export function wirePath({ design, record }: Evaluation, wire: Wire): string {
  const from = end(design, record, wire.from);
  const to = end(design, record, wire.to);
  return from && to ? `M${from.x} ${from.y}L${to.x} ${to.y}` : "";
}

export function boxPath({ x, y, width, height }: Box): string {
  return `M${x} ${y}h${width}v${height}h${-width}z`;
}

type Plan = {
  readonly cards: ReadonlyMap<string, string>;
  readonly wires: ReadonlyMap<string, string>;
  readonly marks: string;
};

const NO_SIGNAL = "var(--line-strong)";

const plans = new WeakMap<Evaluation, Plan>();

/** Worked out once, for the canvas and for the map. */
function planOf(evaluation: Evaluation): Plan {
  let plan = plans.get(evaluation);
  if (!plan) {
    plan = drawn(evaluation);
    plans.set(evaluation, plan);
  }
  return plan;
}

function drawn({ design, spectrum, record }: Evaluation): Plan {
  const cards = new Map<string, string>();
  for (const part of design.parts) {
    const family = kindOf(part.kind)?.family ?? "use";
    cards.set(family, (cards.get(family) ?? "") + boxPath(boxOf(design, part)));
  }
  const wires = new Map<string, string>();
  let marks = "";
  for (const wire of design.wires) {
    const from = end(design, record, wire.from);
    const to = end(design, record, wire.to);
    if (!from || !to) continue;
    const { colour, worst } = wireSummary(spectrum(wire));
    const key = colour ?? NO_SIGNAL;
    wires.set(key, `${wires.get(key) ?? ""}M${from.x} ${from.y}L${to.x} ${to.y}`);
    if (worst !== "hit") continue;
    // A stroke without length, drawn as a dot by its round ends: as large on the screen at any zoom.
    marks += `M${(from.x + to.x) / 2} ${(from.y + to.y) / 2}h0`;
  }
  return { cards, wires, marks };
}

function end(design: Design, record: Evaluation["record"], [part, port]: PortRef) {
  const found = record(part);
  return found && portPoint(design, found.part, port);
}
