/** Which kinds of satellite feed the receivers behind a part take. */
import type { PartId } from "../design/design.ts";
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { ReceiverInput } from "../parts/contract.ts";
import { remembered } from "../signal/remember.ts";
import { askWhole, wholeOf } from "./watched.ts";

type Feed = ReceiverInput["feed"];

const known = new WeakMap<Evaluation, Map<PartId, readonly Feed[]>>();

/** One entry for each receiver that some way leads to, and each sort of feed that it takes. */
export function feedsTaken(evaluation: Evaluation, part: PartId): readonly Feed[] {
  const of = (whole: Evaluation) =>
    remembered(
      remembered(known, whole, () => new Map<PartId, readonly Feed[]>()),
      part,
      () => takenBelow(whole, part),
    );
  askWhole(evaluation, (whole) => of(whole).join());
  return of(wholeOf(evaluation));
}

function takenBelow(evaluation: Evaluation, part: PartId): readonly Feed[] {
  const found: Feed[] = [];
  const seen = new Set([part]);
  for (const id of seen) {
    const record = evaluation.record(id);
    if (!record) continue;
    for (const port of record.ports) {
      const end = port.side === "out" ? record.joined[port.id] : undefined;
      if (end) seen.add(end[0]);
    }
    const inputs = record.kind.reception?.(record.options).inputs ?? [];
    const feeds = inputs.filter((i) => i.services.includes("satellite") && record.joined[i.port]);
    found.push(...new Set(feeds.map((i) => i.feed)));
  }
  return found;
}
