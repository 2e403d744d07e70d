/** The neighbourhood of a finding: where somebody who is called to it looks first. */
import type { PartId } from "../../design/design.ts";
import { partsBeyond } from "../../design/lookup.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { Finding } from "../../findings/finding.ts";
import { remembered } from "../../signal/remember.ts";
import type { Site } from "../site.ts";

const known = new WeakMap<Evaluation, Map<string, readonly PartRecord[]>>();

/** The parts of a finding, the culprit first, then all that feed them, then all that they feed. */
export function recordsAround(site: Site, finding: Finding): readonly PartRecord[] {
  const byParts = remembered(known, site.evaluation, () => new Map<string, readonly PartRecord[]>());
  const key = finding.parts.join("|");
  const found = byParts.get(key) ?? around(site, finding.parts);
  byParts.set(key, found);
  return found;
}

function around({ design, evaluation }: Site, parts: readonly PartId[]): readonly PartRecord[] {
  const ids = new Set(parts);
  for (const way of ["upstream", "downstream"] as const)
    for (const id of partsBeyond(design.wires, parts, way)) ids.add(id);
  return [...ids].flatMap((id) => evaluation.record(id) ?? []);
}
