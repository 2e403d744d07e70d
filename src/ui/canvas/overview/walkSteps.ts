/**
 * A walk in an overview: the steps that each thing stands for. What only lies between two things, as a cable does,
 * belongs to the one it leads to, so that every step is to be seen somewhere.
 */
import type { PartId } from "../../../design/design.ts";
import { useApp } from "../../../store/app.ts";
import { type HighlightedPart, useHighlight } from "../highlight.ts";
import { partsOfPlace, type Skeleton, skeletonOf } from "./skeleton.ts";

/** Steps by part, in the order of the walk, as the drawing marks them. */
type Steps = ReadonlyMap<PartId, HighlightedPart>;

/** What there is to mark at a thing of the overview: where one stands in it, else the first of its steps. */
export function useStepAt(item: string): HighlightedPart | undefined {
  const skeleton = useApp((s) => skeletonOf(s.evaluation.design));
  return useHighlight((steps) => stepsOnce(skeleton, steps).get(item));
}

let last: { skeleton: Skeleton; steps: Steps; found: Steps } | null = null;

/** Worked out once for all things that ask, since they ask in one breath. */
function stepsOnce(skeleton: Skeleton, steps: Steps): Steps {
  if (last?.skeleton !== skeleton || last.steps !== steps)
    last = { skeleton, steps, found: stepsInOverview(skeleton, steps) };
  return last.found;
}

/** By the key of the thing that shows them. */
export function stepsInOverview(skeleton: Skeleton, steps: Steps): Steps {
  const found = new Map<string, HighlightedPart>();
  if (steps.size === 0) return found;
  for (const [item, parts] of placed(skeleton, steps)) {
    const own = parts.flatMap((part) => steps.get(part) ?? []);
    const shown = own.find((step) => step.isHere) ?? own[0];
    if (!shown) continue;
    const trouble = shown.trouble ?? own.find((step) => step.trouble)?.trouble ?? null;
    found.set(item, trouble === shown.trouble ? shown : { ...shown, trouble });
  }
  return found;
}

/** The parts walked past, by the things that show them. */
function placed(skeleton: Skeleton, steps: Steps): ReadonlyMap<string, readonly PartId[]> {
  const owners = ownersOf(skeleton);
  const way = [...steps.keys()];
  const leads = (from: string, to: string) => skeleton.links.some((l) => l.from === from && l.to === to);
  const found = new Map<string, PartId[]>();
  for (const [n, part] of way.entries()) {
    const before = way.slice(0, n).findLast((id) => owners.has(id));
    const after = way.slice(n).find((id) => owners.has(id));
    const [a, b] = [owners.get(before ?? ""), owners.get(after ?? "")];
    const between = a !== undefined && (b === undefined || leads(b, a)) ? a : b;
    const owner = owners.get(part) ?? between;
    for (const item of owner === undefined ? [] : itemsOf(skeleton, owner, way))
      found.set(item, [...(found.get(item) ?? []), part]);
  }
  return found;
}

/** What shows each part: a card, or a place. */
function ownersOf({ cards, groups }: Skeleton): ReadonlyMap<PartId, string> {
  const owners = new Map<PartId, string>(cards.map(({ id }) => [id, id]));
  for (const { places } of groups)
    for (const place of places) for (const id of partsOfPlace(place)) owners.set(id, place.key);
  return owners;
}

/** A part that feeds a group is shown by its card or by a heading; of several risers by that of the one walked along. */
function itemsOf({ groups }: Skeleton, owner: string, way: readonly PartId[]): readonly string[] {
  const own = groups.filter(({ feeder }) => feeder === owner);
  const walked = own.find(({ places }) =>
    places.some((place) => partsOfPlace(place).some((id) => way.includes(id))),
  );
  const heading = (walked ?? own[0])?.key;
  return heading === undefined || heading === owner ? [owner] : [owner, heading];
}
