/** What a change gives up although everything is still received: tuners that can be used at a time. */
import type { PartRecord } from "../evaluate/evaluation.ts";
import { plural } from "../words/plural.ts";
import type { Site } from "./site.ts";

export function givenUp(before: Site, after: Site): readonly string[] {
  return before.evaluation.records.flatMap((record) => {
    const now = after.evaluation.record(record.part.id);
    const had = satelliteTuners(record);
    if (had === 0 || !now) return [];
    const has = satelliteTuners(now);
    if (has >= had) return [];
    const name = `“${now.part.label || now.part.id}”`;
    return [
      plural(has, {
        zero: `${name} has no satellite tuner then, in place of ${had}.`,
        one: (n) => `${name} has ${n} satellite tuner then, in place of ${had}.`,
        other: (n) => `${name} has ${n} satellite tuners then, in place of ${had}.`,
      }),
    ];
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
