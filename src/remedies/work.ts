/** What has to be done to get from one design to another, as facts: part by part and wire by wire. */
import type { Part, PartId, PortRef, Wire } from "../design/design.ts";
import { isSamePort, portOf } from "../design/lookup.ts";
import { kindOf } from "../parts/catalogue.ts";
import { onSiteOf } from "../parts/meanings.ts";
import { minutesOf, type PriceList, WIRE_MINUTES } from "./cost.ts";
import type { Difference } from "./difference.ts";

/** Where one has to go for it. */
export type WorkPlace = "roof" | "building" | "room";

export type OptionChange = { readonly option: string; readonly from: unknown; readonly to: unknown };

type Task =
  /** A new part; `between`: in a wire that ran straight so far. */
  | { readonly kind: "fit"; readonly part: Part; readonly between?: readonly [PortRef, PortRef] }
  | { readonly kind: "remove"; readonly part: Part }
  | { readonly kind: "replace"; readonly before: Part; readonly after: Part }
  | { readonly kind: "set"; readonly part: Part; readonly options: readonly OptionChange[] }
  | { readonly kind: "connect"; readonly from: PortRef; readonly to: PortRef }
  | { readonly kind: "disconnect"; readonly from: PortRef; readonly to: PortRef }
  /** The lead stays at one end and moves at the other. */
  | { readonly kind: "move lead"; readonly kept: PortRef; readonly from: PortRef; readonly to: PortRef };

export type Work = Task & { readonly place: WorkPlace; readonly minutes: number };

/** The work for a difference: parts first, then the leads that no new part brings with it. */
export function workOf(diff: Difference, prices: PriceList): readonly Work[] {
  const places = new Map(
    [...diff.removed, ...diff.added, ...diff.changed.map((c) => c.after)].map((p) => [p.id, p]),
  );
  const at = (task: Task, part: Part | undefined, minutes: number): Work => ({
    ...task,
    place: placeOf(part),
    minutes,
  });
  const { straight, leads } = leadsOf(diff);
  return [
    ...diff.added.map((part) => {
      const between = straight.get(part.id);
      return at({ kind: "fit", part, ...(between ? { between } : {}) }, part, minutesOf.fit(part, prices));
    }),
    ...diff.removed.map((part) => at({ kind: "remove", part }, part, minutesOf.remove(part, prices))),
    ...diff.changed.map((change) => {
      const { before, after, options } = change;
      const minutes = minutesOf.change(change, prices);
      if (isOther(change)) return at({ kind: "replace", before, after }, after, minutes);
      const changes = options.map((option) => ({
        option,
        from: before.options[option],
        to: after.options[option],
      }));
      return at({ kind: "set", part: after, options: changes }, after, minutes);
    }),
    ...leads.map((task) => at(task, places.get(endOf(task)[0]), WIRE_MINUTES)),
  ];
}

/** Whether a change takes another part: another kind, or a value that is fixed at the factory. */
function isOther({ before, after, options }: Difference["changed"][number]): boolean {
  const kind = kindOf(after.kind);
  return before.kind !== after.kind || options.some((key) => kind && onSiteOf(kind, key) === undefined);
}

type LeadTask = Extract<Task, { kind: "connect" | "disconnect" | "move lead" }>;

function endOf(task: LeadTask): PortRef {
  return task.kind === "move lead" ? task.kept : task.to;
}

/** New parts that sit in what was one wire, and leads that are connected, moved or taken off. */
function leadsOf(diff: Difference): {
  readonly straight: ReadonlyMap<PartId, readonly [PortRef, PortRef]>;
  readonly leads: readonly LeadTask[];
} {
  const added = new Set(diff.added.map((p) => p.id));
  const removed = new Set(diff.removed.map((p) => p.id));
  const gone = new Set(diff.wiresRemoved.filter((w) => !removed.has(w.from[0]) && !removed.has(w.to[0])));
  const come = diff.wiresAdded.filter((w) => !added.has(w.from[0]) && !added.has(w.to[0]));
  const straight = new Map<PartId, readonly [PortRef, PortRef]>();
  for (const id of added) {
    const into = diff.wiresAdded.find((w) => w.to[0] === id);
    const out = diff.wiresAdded.find((w) => w.from[0] === id);
    const wire = [...gone].find(
      (w) => into && out && isSamePort(w.from, into.from) && isSamePort(w.to, out.to),
    );
    if (!wire) continue;
    gone.delete(wire);
    straight.set(id, [wire.from, wire.to]);
  }
  const healed = diff.removed.length > 0 ? come.filter((w) => !isHealed(w, diff)) : come;
  const leads: LeadTask[] = [];
  for (const wire of healed) {
    const former = [...gone].find((w) => isSamePort(w.from, wire.from) || isSamePort(w.to, wire.to));
    if (former) gone.delete(former);
    // The lead of a replaced part goes with it onto the socket that has another name now.
    if (former && isRenamed(former, wire, diff)) continue;
    if (!former) leads.push({ kind: "connect", from: wire.from, to: wire.to });
    else if (isSamePort(former.from, wire.from))
      leads.push({ kind: "move lead", kept: wire.from, from: former.to, to: wire.to });
    else leads.push({ kind: "move lead", kept: wire.to, from: former.from, to: wire.from });
  }
  for (const { from, to } of gone) leads.push({ kind: "disconnect", from, to });
  return { straight, leads };
}

/** A wire between the same two parts, whose former port one of them no longer has. */
function isRenamed(former: Wire, wire: Wire, { changed }: Difference): boolean {
  if (former.from[0] !== wire.from[0] || former.to[0] !== wire.to[0]) return false;
  return changed.some(({ after }) =>
    [former.from, former.to].some(([id, port]) => id === after.id && portOf(after, port) === undefined),
  );
}

/** A wire that closes up where a part was taken out of it is part of taking it out. */
function isHealed(wire: Wire, { removed, wiresRemoved }: Difference): boolean {
  return removed.some(
    ({ id }) =>
      wiresRemoved.some((w) => isSamePort(w.from, wire.from) && w.to[0] === id) &&
      wiresRemoved.some((w) => w.from[0] === id && isSamePort(w.to, wire.to)),
  );
}

/** Parts that one climbs to are on the roof; sets and sockets are in the room; the rest lies between. */
function placeOf(part: Part | undefined): WorkPlace {
  const kind = kindOf(part?.kind ?? "");
  if (kind?.family === "use" || kind?.delivery) return "room";
  return kind?.cautions?.includes("height") || kind?.family === "receive" ? "roof" : "building";
}
