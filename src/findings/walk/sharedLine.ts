/** A line on which several receivers speak: where they come together, and who hangs on it, leg by leg. */
import type { PartId, PortRef } from "../../design/design.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";

export type Speaker = { readonly part: PartId; readonly port: string };

export type SharedLine = {
  /** The part nearest to the switch whose outputs bring several speakers together; absent where none does. */
  readonly joins?: PartId;
  /** Receiver inputs that speak, in the order of the legs that they hang on: the same however they are drawn. */
  readonly speakers: readonly Speaker[];
};

/** Goes down from a switched output to everybody who can speak to it. */
export function sharedLine(
  evaluation: Evaluation,
  at: { readonly part: PartId; readonly port: string },
): SharedLine {
  const speakers: Speaker[] = [];
  const seen = new Set<string>();
  let joins: PartId | undefined;
  const first = evaluation.record(at.part)?.joined[at.port];
  // The last one is looked at next, so legs are put on in reverse.
  const open: PortRef[] = first ? [first] : [];
  for (let next = open.pop(); next; next = open.pop()) {
    const [id, input] = next;
    const record = evaluation.record(id);
    if (!record || seen.has(next.join("/"))) continue;
    seen.add(next.join("/"));
    const own = record.power.supplies?.find((s) => s.port === input && s.kind === "commands");
    if (own) speakers.push({ part: id, port: input });
    const legs = (record.power.paths ?? []).filter(
      (path) => path.to === input && record.feeds[path.from]?.some((o) => o.kind === "commands"),
    );
    if (legs.length > 1) joins ??= id;
    const far = legs.flatMap((path) => {
      const end = record.joined[path.from];
      return end ? [end] : [];
    });
    open.push(...far.reverse());
  }
  return { ...(joins === undefined ? {} : { joins }), speakers };
}
