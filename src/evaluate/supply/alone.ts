/** Supply without signals: what every part of a design gets and draws, for whoever asks for many states of one island. */

import type { Design, PartId } from "../../design/design.ts";
import { fieldOf } from "../../design/outsideField.ts";
import { settingsOf } from "../../design/settings.ts";
import type { Cell } from "../cell.ts";
import { finished } from "../steps.ts";
import { structureOf } from "../structure.ts";
import { type Sweep, startSweep } from "../sweep.ts";
import { islandsAt } from "./island.ts";
import { groundOf, settleSupplies } from "./sweep.ts";

export type SupplyRecord = Pick<Cell, "feeds" | "demands" | "drawsMa" | "shutDown" | "powered">;

/** What is known of a part's supply; undefined for an unknown part. */
export function supplyAlone(design: Design): (part: PartId) => SupplyRecord | undefined {
  const sweep = sweepOf(design);
  finished(settleSupplies(sweep));
  return (part) => sweep.cells[sweep.structure.indexOf.get(part) ?? -1];
}

/** The parts that direct current joins with this one, and the wires between them. */
export function islandDesign(design: Design, part: PartId): Design {
  const sweep = sweepOf(design);
  const index = sweep.structure.indexOf.get(part);
  const members = index === undefined ? [] : islandsAt(groundOf(sweep), [index]).flat();
  const ids = new Set(members.map(({ id }) => id));
  return {
    ...design,
    parts: design.parts.filter(({ id }) => ids.has(id)),
    wires: design.wires.filter(({ from, to }) => ids.has(from[0]) && ids.has(to[0])),
  };
}

function sweepOf(design: Design): Sweep {
  // How amplifiers behave, and what field lies outside, makes no difference to what parts draw.
  return startSweep(design, structureOf(design), undefined, {
    amplifiers: { derating: "usual", cascade: "in step" },
    field: fieldOf(settingsOf(design)),
  });
}
