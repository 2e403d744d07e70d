/** Parts of the plan that nobody put in. */
import type { Part } from "../../../design/design.ts";
import { removeParts } from "../../../design/edits/remove.ts";
import { quoted } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { asKind } from "../change.ts";
import type { Fault } from "../fault.ts";
import { makeFault, type Sort } from "./sort.ts";

export const missingFaults: Sort = (design) => design.parts.flatMap(missing);

function missing(part: Part): Fault[] {
  const job = kindOf(part.kind)?.trade.job;
  const type = job === "filter" ? "filter-missing" : job === "pad" ? "pad-missing" : null;
  if (type)
    return [
      makeFault(type, {
        key: part.id,
        title: `${quoted(part)} was never put in: a plain coupler sits in its place.`,
        parts: [part.id],
        // In its place, and not taken away: its connectors are still there to measure at.
        apply: (d) => asKind(d, part.id, "attenuator", { lossDb: 0, dcPass: true }),
      }),
    ];
  if (job !== "load") return [];
  return [
    makeFault("load-missing", {
      key: part.id,
      title: `${quoted(part)} was never put in.`,
      parts: [part.id],
      apply: (d) => {
        const edit = removeParts(d, new Set([part.id]), new Set());
        return edit.ok ? edit.design : d;
      },
    }),
  ];
}
