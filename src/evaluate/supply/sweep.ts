/** Works out the islands that an edit has to do with, and tells the parts on them what they get. */
import { type Demand, type Feed, NO_DEMAND, NO_FEED } from "../../signal/control.ts";
import { remembered } from "../../signal/remember.ts";
import { type Cell, type IslandNote, NO_PORTS, NO_SOURCES, NOTHING } from "../cell.ts";
import { diesAtVertical, isPowered, sameDemand, sameFeed, switchStates } from "../power.ts";
import type { Steps } from "../steps.ts";
import { countWork, neighbourOf, ownCell, type Sweep } from "../sweep.ts";
import { type Ground, islandsAt, type Member } from "./island.ts";
import { type SettledIsland, settleIsland } from "./settle.ts";

/** Supplies and commands: every island with a marked part on it. */
export function* settleSupplies(sweep: Sweep): Steps<void> {
  const ground = groundOf(sweep);
  const marked = [...sweep.structure.order].filter((_, k) => sweep.supplies[k]);
  const told = new Map<number, Map<number, Told>>();
  for (const index of marked) told.set(index, new Map());
  for (const island of islandsAt(ground, marked)) {
    const steps = settleIsland(island, ground);
    let step = steps.next();
    // Shown, and held against the limit, while it is worked out: one island may be the whole design.
    for (; !step.done; step = steps.next())
      yield { done: 0, total: sweep.cells.length, work: sweep.work + step.value };
    const settled = step.value;
    const work = Math.ceil((settled?.work ?? 0) / island.length);
    for (const member of island)
      remembered(told, member.index, () => new Map<number, Told>()).set(
        member.group,
        toldOf(member, settled, work),
      );
    // Shown, and held against the limit, before any more is worked out.
    sweep.work += settled?.work ?? 0;
    yield { done: 0, total: sweep.cells.length, work: sweep.work };
    sweep.work -= settled?.work ?? 0;
  }
  for (const [index, groups] of told) yield* update(sweep, index, groups);
}

/** What a part is told of one of its groups of ports. */
type Told = Pick<Cell, "feeds" | "offers" | "demands"> & { readonly note: IslandNote };

const NO_NOTE: IslandNote = {
  work: 0,
  left: 0,
  statesLeft: 0,
  drawsMa: 0,
  shutDown: NO_PORTS,
  shorts: NO_SOURCES,
};

function toldOf(member: Member, settled: SettledIsland | undefined, work: number): Told {
  if (!settled) return { feeds: NOTHING, offers: NOTHING, demands: NOTHING, note: NO_NOTE };
  const feeds: Record<string, Feed> = {};
  const offers: Record<string, Feed> = {};
  const demands: Record<string, Demand> = {};
  for (const port of member.ports) {
    const feed = settled.feedAt(member, port);
    const offered = settled.offersAt(member, port);
    const demand = settled.demandAt(member, port);
    if (feed) feeds[port] = feed;
    if (offered) offers[port] = offered;
    if (demand !== NO_DEMAND) demands[port] = demand;
  }
  const verticalVolts = settled.verticalVolts(member);
  const note = {
    work,
    left: settled.left(member),
    statesLeft: settled.statesLeft(member),
    drawsMa: settled.drawsMa(member),
    shutDown: settled.shutDown(member),
    shorts: settled.shorts(member),
    ...(verticalVolts === undefined ? {} : { verticalVolts }),
  };
  return { feeds, offers, demands, note };
}

/** Puts together what a part is told now and what it knows of its other ports, and marks it where that is news. */
function* update(sweep: Sweep, index: number, groups: ReadonlyMap<number, Told>): Steps<void> {
  const before = sweep.cells[index];
  if (!before || before.looped) return;
  const { tied, power } = before.traits;
  const feeds = merged(before, groups, (c) => c.feeds, sameFeed);
  const islands = tied.map((_, group) => groups.get(group)?.note ?? before.islands[group] ?? NO_NOTE);
  const arriving = (port: string) => feeds[port] ?? NO_FEED;
  const switches = switchStates(before.part.id, power, arriving, before.switches);
  const after = {
    feeds,
    offers: merged(before, groups, (c) => c.offers, sameFeed),
    demands: merged(before, groups, (c) => c.demands, sameDemand),
    shutDown: asBefore(before.shutDown, [...new Set(islands.flatMap((note) => note.shutDown))], NO_PORTS),
    shorts: asBefore(before.shorts, [...new Set(islands.flatMap((note) => note.shorts))].sort(), NO_SOURCES),
    switches: sameValues(before.switches, switches) ? before.switches : switches,
    drawsMa: islands.reduce((sum, note) => sum + note.drawsMa, 0),
    suppliesLeft: islands.reduce((most, note) => Math.max(most, note.left), 0),
    supplyStatesLeft: islands.reduce((most, note) => Math.max(most, note.statesLeft), 0),
    powered: isPowered(power, arriving),
    dies: diesAtVertical(before.part.id, power, arriving, {
      before: before.dies,
      verticalVolts: mostVertical(islands),
    }),
  };
  const keys = Object.keys(after) as (keyof typeof after)[];
  const isNews = keys.some((key) => after[key] !== before[key]);
  if (isNews) {
    const cell = ownCell(sweep, index);
    if (!cell) return;
    const isOtherwise = after.powered !== before.powered || after.dies !== before.dies;
    if (isOtherwise) cell.treatment = undefined;
    if (isOtherwise || after.switches !== before.switches)
      sweep.signals[sweep.structure.place[index] ?? 0] = 1;
    Object.assign(cell, after);
  } else if (!sweep.owned[index]) {
    // Its notes change at most, which nobody is shown: the record stays the same object.
    sweep.cells[index] = { ...before };
  }
  const cell = sweep.cells[index];
  if (!cell) return;
  cell.islands = islands;
  yield countWork(sweep, cell, {
    done: 0,
    work: { supplies: islands.reduce((sum, note) => sum + note.work, 1) },
  });
}

/** Most that any of the islands of a part gives it with all asking for vertical; undefined where its offers tell that. */
function mostVertical(islands: readonly IslandNote[]): number | undefined {
  const known = islands.flatMap(({ verticalVolts }) => verticalVolts ?? []);
  return known.length > 0 ? Math.max(...known) : undefined;
}

/** What is known port by port: of the groups that were told anew as they are told, of the others as before. */
function merged<T>(
  before: Cell,
  groups: ReadonlyMap<number, Told>,
  pick: (of: Cell | Told) => Readonly<Record<string, T>>,
  isSame: (a: T, b: T) => boolean,
): Readonly<Record<string, T>> {
  const former = pick(before);
  const all: Record<string, T> = {};
  before.traits.tied.forEach((ports, group) => {
    for (const port of ports) {
      const now = pick(groups.get(group) ?? before)[port];
      const kept = former[port];
      if (now !== undefined) all[port] = kept !== undefined && isSame(kept, now) ? kept : now;
    }
  });
  return sameValues(former, all) ? former : Object.keys(all).length > 0 ? all : NOTHING;
}

/** True when the same objects stand under the same names. */
function sameValues<T>(a: Readonly<Record<string, T>>, b: Readonly<Record<string, T>>): boolean {
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => a[name] === b[name]);
}

function asBefore<T>(former: readonly T[], now: readonly T[], none: readonly T[]): readonly T[] {
  if (now.length === 0) return none;
  return now.length === former.length && now.every((item, i) => item === former[i]) ? former : now;
}

export function groundOf(sweep: Sweep): Ground {
  return {
    groupsOf: (i) => (sweep.structure.looped[i] ? NO_GROUPS : (sweep.cells[i]?.traits.tied ?? NO_GROUPS)),
    neighbourOf: (i, port) => neighbourOf(sweep, i, port),
    memberOf: (i, group) => {
      const cell = sweep.cells[i];
      const ports = cell?.traits.tied[group];
      if (!cell || !ports || cell.looped) return undefined;
      return {
        index: i,
        id: cell.part.id,
        group,
        ports,
        power: cell.traits.power,
        place: sweep.structure.place[i] ?? 0,
      };
    },
  };
}

const NO_GROUPS: readonly (readonly string[])[] = [];
