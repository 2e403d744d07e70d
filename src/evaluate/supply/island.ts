/** Islands: all that direct current joins. What happens on one has nothing to do with any other. */
import type { PartId } from "../../design/design.ts";
import type { PowerTreatment } from "../../parts/contract.ts";

/** Ports of a part that belong to one island. */
export type Member = {
  readonly index: number;
  readonly id: PartId;
  /** Which of its groups of ports. */
  readonly group: number;
  readonly ports: readonly string[];
  readonly power: PowerTreatment;
  /** Where the part stands between sources and receivers. */
  readonly place: number;
};

/** The members in an order that depends on their names alone, so that the same island is always solved alike. */
export type Island = readonly Member[];

/** What a search for islands asks. */
export type Ground = {
  /** The groups of ports of a part; none for a part on a loop. */
  readonly groupsOf: (index: number) => readonly (readonly string[])[];
  readonly neighbourOf: (
    index: number,
    port: string,
  ) => { readonly index: number; readonly port: string } | undefined;
  readonly memberOf: (index: number, group: number) => Member | undefined;
};

/** All islands that one of these parts lies on. */
export function islandsAt(ground: Ground, parts: Iterable<number>): readonly Island[] {
  const seen = new Set<string>();
  const islands: Island[] = [];
  for (const index of parts)
    ground.groupsOf(index).forEach((_, group) => {
      const found = spread(ground, { index, group }, seen);
      if (found.length > 0) islands.push(found);
    });
  return islands;
}

function spread(ground: Ground, start: { index: number; group: number }, seen: Set<string>): Island {
  const members: Member[] = [];
  const open = [start];
  for (let next = open.pop(); next; next = open.pop()) {
    const { index, group } = next;
    const key = `${index}/${group}`;
    const member = seen.has(key) ? undefined : ground.memberOf(index, group);
    seen.add(key);
    if (!member) continue;
    members.push(member);
    for (const port of member.ports) {
      const far = ground.neighbourOf(index, port);
      const farGroup = far ? ground.groupsOf(far.index).findIndex((ports) => ports.includes(far.port)) : -1;
      if (far && farGroup >= 0) open.push({ index: far.index, group: farGroup });
    }
  }
  return members.sort((a, b) => (a.id === b.id ? a.group - b.group : a.id < b.id ? -1 : 1));
}
