/** What a change gives up although everything is still received: tuners that can be used at a time. */
import type { PartId } from "../design/design.ts";
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { Site } from "./site.ts";

/** A receiver with fewer satellite tuners than before. */
export type GivenUp = { readonly part: PartId; readonly tuners: number; readonly before: number };

export function placesGivenUp(before: Site, after: Site): readonly GivenUp[] {
  return before.evaluation.records.flatMap((record) => {
    const now = after.evaluation.record(record.part.id);
    const had = satelliteTuners(record);
    if (had === 0 || !now) return [];
    const has = satelliteTuners(now);
    if (has >= had) return [];
    return [{ part: record.part.id, tuners: has, before: had }];
  });
}

/** The tuners of a wideband receiver draw from both of its inputs; others have theirs at each input. */
function satelliteTuners(record: PartRecord): number {
  const inputs = (record.kind.reception?.(record.options).inputs ?? []).filter((i) =>
    i.services.includes("satellite"),
  );
  const counts = inputs.map((i) => i.tuners);
  return inputs.some((i) => i.feed === "wideband")
    ? Math.max(0, ...counts)
    : counts.reduce((sum, n) => sum + n, 0);
}
