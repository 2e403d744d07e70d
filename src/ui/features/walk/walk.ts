/** What a walk shows, worked out from the evaluation once for the pane, the canvas and the paper. */
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import type { CarrierId } from "../../../evaluate/trace.ts";
import { type ToldCommand, tellCommand } from "../../../sentences/walk/command.ts";
import { type ToldSignal, type ToldWay, tellSignal } from "../../../sentences/walk/signal.ts";
import { type ToldSupplyStep, tellSupply } from "../../../sentences/walk/supply.ts";
import { useApp } from "../../../store/app.ts";
import { supplySource } from "../../kit/asked/places.ts";
import { useWalking, type WalkState } from "../../kit/asked/walking.ts";
import { branchEnds, branchTo, signalRoute, supplyRoute, type WalkRoute } from "./stops.ts";

export type ShownSignal = {
  readonly view: "signal";
  readonly walking: WalkState;
  readonly ways: readonly ToldWay[];
  /** The one whose steps are taken. */
  readonly way: ToldWay | undefined;
  readonly route: WalkRoute;
  /** Of the route's stops. */
  readonly stop: number;
};

export type ShownSupply = {
  readonly view: "supply";
  readonly walking: WalkState;
  /** The input that gives it; null where none does. */
  readonly source: { readonly part: string; readonly port: string } | null;
  readonly steps: readonly ToldSupplyStep[];
  /** Ends of its branches, as places in the steps. */
  readonly ends: readonly number[];
  readonly branch: readonly ToldSupplyStep[];
  readonly commands: ToldCommand["stops"];
  /** Why there is nothing to walk, where there is nothing. */
  readonly silence: string;
  readonly route: WalkRoute;
  readonly stop: number;
};

export type ShownWalk = ShownSignal | ShownSupply;

export function useShownWalk(): ShownWalk | null {
  const walking = useWalking();
  const evaluation = useApp((s) => s.evaluation);
  return walking && shownWalk(evaluation, walking);
}

let last: { evaluation: Evaluation; walking: WalkState; shown: ShownWalk } | null = null;

/** The same object for the same question, for several ask it in one breath. */
export function shownWalk(evaluation: Evaluation, walking: WalkState): ShownWalk {
  if (last?.evaluation !== evaluation || last.walking !== walking) {
    const shown = walking.view === "signal" ? signal(evaluation, walking) : supply(evaluation, walking);
    last = { evaluation, walking, shown };
  }
  return last.shown;
}

function signal(evaluation: Evaluation, walking: WalkState): ShownSignal {
  const { place, extra, followed } = walking;
  const { ways } = signalWalk(evaluation, walking);
  const isIt = (id: CarrierId) => (way: ToldWay) => sameCarrier(way.carrier, id);
  const way =
    (followed && ways.find(isIt(followed))) ??
    ways.find((w) => extra.some((id) => isIt(id)(w)) && !w.got) ??
    ways.find((w) => !w.got) ??
    ways.find((w) => w.loss) ??
    ways[0];
  const route = signalRoute(evaluation, way, place.part);
  return { view: "signal", walking, ways, way, route, stop: stopOf(walking, route) };
}

function signalWalk(evaluation: Evaluation, { place, service, extra }: WalkState): ToldSignal {
  const question = {
    part: place.part,
    service,
    ...(place.port === undefined ? {} : { port: place.port }),
  };
  const usual = tellSignal(evaluation, question);
  if (extra.length === 0) return usual;
  const carriers = [...usual.ways.map((w) => w.carrier), ...extra];
  return tellSignal(evaluation, { ...question, carriers });
}

export function sameCarrier(a: CarrierId, b: CarrierId): boolean {
  return a.origin === b.origin && a.index === b.index;
}

function supply(evaluation: Evaluation, walking: WalkState): ShownSupply {
  const source = supplySource(evaluation, walking.place);
  const walk = source ? tellSupply(evaluation, source) : null;
  const steps = walk?.steps ?? [];
  const ends = branchEnds(steps);
  const end = ends.find((n) => steps[n]?.part === walking.branch) ?? ends[0];
  const branch = end === undefined ? [] : branchTo(steps, end);
  const route = supplyRoute(evaluation, branch);
  return {
    view: "supply",
    walking,
    source,
    steps,
    ends,
    branch,
    commands: source ? tellCommand(evaluation, source).stops : [],
    silence: walk?.lines[0] ?? "Nothing on this line gives a supply or a command.",
    route,
    stop: stopOf(walking, route),
  };
}

function stopOf({ stop }: WalkState, { stops, trouble }: WalkRoute): number {
  return Math.max(0, Math.min(stop ?? trouble?.at ?? 0, stops.length - 1));
}
