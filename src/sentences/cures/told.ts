/** What the words of a step may look at: its facts, and the names of parts before and after it. */
import type { Design, Part, PartId, PortRef } from "../../design/design.ts";
import { partById, portsOf, quoted } from "../../design/lookup.ts";
import type { FactsByIdea, IdeaId } from "../../remedies/cureStep.ts";

export type StepNames = {
  readonly part: (id: PartId) => Part | undefined;
  /** “Plate 2” */
  readonly name: (id: PartId) => string;
  /** “Plate 2”, with the port where it has several of that side: “Plate 2” (socket TV). */
  readonly end: (at: PortRef) => string;
  /** The label of a port: "HL", "out 2". */
  readonly port: (at: PortRef) => string;
};

export type StepTold<I extends IdeaId> = StepNames & {
  readonly place: PartId;
  readonly facts: FactsByIdea[I];
};

export type StepWords<I extends IdeaId> = {
  /** What is to be done, as an order. */
  readonly title: (told: StepTold<I>) => string;
  /** Why it should help, in a sentence. */
  readonly reason: (told: StepTold<I>) => string;
};

export type WordsOf<I extends IdeaId> = { readonly [K in I]: StepWords<K> };

/** Names of parts in some designs: the first that has a part names it. */
export function namesIn(...designs: readonly Design[]): StepNames {
  const part = (id: PartId) => {
    for (const design of designs) {
      const found = partById(design, id);
      if (found) return found;
    }
    return undefined;
  };
  const name = (id: PartId) => quoted(part(id));
  /** The first design in which the part has that port: a step may have given it. */
  const portsWith = ([id, key]: PortRef) => {
    for (const design of designs) {
      const found = partById(design, id);
      const ports = found ? portsOf(found) : [];
      const own = ports.find((p) => p.id === key);
      if (own) return { own, sisters: ports.filter((p) => p.side === own.side) };
    }
    return undefined;
  };
  const port = (at: PortRef) => portsWith(at)?.own.label ?? at[1];
  const end = (at: PortRef) =>
    (portsWith(at)?.sisters.length ?? 0) > 1 ? `${name(at[0])} (${port(at)})` : name(at[0]);
  return { part, name, port, end };
}
