/** What has to be done to get from one design to another, as facts: part by part and wire by wire. */
import type { Part, PartId, PortRef, Wire } from "../design/design.ts";
import { isSamePort, partById, portOf } from "../design/lookup.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Difference } from "./difference.ts";
import { minutesOf, type PriceList, settingMinutes, WIRE_MINUTES } from "./prices.ts";

/** Where one has to go for it. */
export type WorkPlace = "roof" | "building" | "room";

export type OptionChange = { readonly option: string; readonly from: unknown; readonly to: unknown };

type Task =
  /** A new part. `between`: what a cable, or whatever else has one lead in and one out, is joined to. */
  | { readonly kind: "fit"; readonly part: Part; readonly between?: readonly [PortRef, PortRef] }
  | { readonly kind: "remove"; readonly part: Part }
  | { readonly kind: "replace"; readonly before: Part; readonly after: Part }
  | { readonly kind: "set"; readonly part: Part; readonly options: readonly OptionChange[] }
  | { readonly kind: "connect"; readonly from: PortRef; readonly to: PortRef }
  | { readonly kind: "disconnect"; readonly from: PortRef; readonly to: PortRef }
  /** The lead stays at one end and moves at the other. */
  | { readonly kind: "move lead"; readonly kept: PortRef; readonly from: PortRef; readonly to: PortRef };

/** `minutes`: 0 for a lead of a new part, whose time is in the fitting. */
export type Work = Task & { readonly place: WorkPlace; readonly minutes: number };

/** The work for a difference: new parts and those that go, what is changed, then lead by lead. */
export function workOf(diff: Difference, prices: PriceList): readonly Work[] {
  const at = (task: Task, part: Part | undefined, minutes: number): Work => ({
    ...task,
    place: placeOf(part),
    minutes,
  });
  const partOf = ([id]: PortRef) => partById(diff.after, id) ?? partById(diff.before, id);
  const added = new Set(diff.added.map((p) => p.id));
  const { between, leads } = leadsOf(diff);
  return [
    ...diff.added.map((part) => {
      const ends = between.get(part.id);
      return at({ kind: "fit", part, ...(ends ? { between: ends } : {}) }, part, minutesOf.fit(part, prices));
    }),
    ...diff.removed.map((part) => at({ kind: "remove", part }, part, minutesOf.remove(part, prices))),
    ...diff.changed.map((change) => {
      const { before, after, options } = change;
      const minutes = minutesOf.change(change, prices);
      if (settingMinutes(change) === null) return at({ kind: "replace", before, after }, after, minutes);
      const changes = options.map((option) => ({
        option,
        from: before.options[option],
        to: after.options[option],
      }));
      return at({ kind: "set", part: after, options: changes }, after, minutes);
    }),
    ...leads.map((task) => {
      const ofNewPart = endsOf(task).some(([id]) => added.has(id));
      return at(task, partOf(task.to), ofNewPart ? 0 : WIRE_MINUTES);
    }),
  ];
}

type LeadTask = Extract<Task, { kind: "connect" | "disconnect" | "move lead" }>;

function endsOf(task: LeadTask): readonly PortRef[] {
  return task.kind === "move lead" ? [task.kept, task.from, task.to] : [task.from, task.to];
}

/** What new parts lie between, and the leads that are connected, moved or taken off besides. */
function leadsOf(diff: Difference): {
  readonly between: ReadonlyMap<PartId, readonly [PortRef, PortRef]>;
  readonly leads: readonly LeadTask[];
} {
  const removed = new Set(diff.removed.map((p) => p.id));
  const isOfRemoved = (w: Wire) => removed.has(w.from[0]) || removed.has(w.to[0]);
  const gone = new Set(diff.wiresRemoved.filter((w) => !isOfRemoved(w)));
  // Leads of a part that goes are taken off with it, unless they go somewhere else.
  const loose = new Set(diff.wiresRemoved.filter(isOfRemoved));
  const between = new Map<PartId, readonly [PortRef, PortRef]>();
  for (const { id } of diff.added) {
    const into = diff.wiresAdded.filter((w) => w.to[0] === id);
    const out = diff.wiresAdded.filter((w) => w.from[0] === id);
    const [first, last] = [into[0], out[0]];
    if (!first || !last || into.length + out.length > 2) continue;
    between.set(id, [first.from, last.to]);
    for (const wire of gone)
      if (isSamePort(wire.from, first.from) && isSamePort(wire.to, last.to)) gone.delete(wire);
  }
  const leads: LeadTask[] = [];
  for (const wire of diff.wiresAdded) {
    if (between.has(wire.from[0]) || between.has(wire.to[0]) || isHealed(wire, diff)) continue;
    const former = [...gone, ...loose].find(
      (w) => isSamePort(w.from, wire.from) || isSamePort(w.to, wire.to),
    );
    if (former) {
      gone.delete(former);
      loose.delete(former);
    }
    // The lead of a replaced part goes with it onto the socket that has another name now.
    if (former && isRenamed(former, wire, diff)) continue;
    if (!former) leads.push({ kind: "connect", from: wire.from, to: wire.to });
    else if (isSamePort(former.from, wire.from))
      leads.push({ kind: "move lead", kept: wire.from, from: former.to, to: wire.to });
    else leads.push({ kind: "move lead", kept: wire.to, from: former.from, to: wire.from });
  }
  for (const { from, to } of gone) leads.push({ kind: "disconnect", from, to });
  return { between, leads };
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
  if (kind?.trade.job === "signal source" || kind?.trade.job === "unwanted signal") return "building";
  return kind?.cautions?.includes("height") || kind?.family === "receive" ? "roof" : "building";
}
