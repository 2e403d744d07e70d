/** The walk now on the screen: view state of this window, not of the design. */
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import type { CarrierId } from "../../../evaluate/trace.ts";
import { useApp } from "../../../store/app.ts";
import { changeLower, closeLower, currentAsked, dropLower, showLower, useAsked } from "./lower.ts";
import {
  supplySource,
  type WalkPlace,
  type WantedService,
  walkPlaces,
  walkPlacesOf,
  walkServicesAt,
} from "./places.ts";
import { clearQuestion } from "./questionState.ts";

export type WalkView = "signal" | "supply";

export type WalkState = {
  readonly view: WalkView;
  readonly place: WalkPlace;
  readonly service: WantedService;
  /** Carriers walked beside the lowest, the highest and the worst. */
  readonly extra: readonly CarrierId[];
  /** The carrier whose steps are taken; null: the first that fails, or else the first. */
  readonly followed: CarrierId | null;
  /** Of a supply that forks: the part at the end of the branch followed; null: the first that fails, or else the first. */
  readonly branch: string | null;
  /** Place among the stops; null: where it is lost, or else the beginning. */
  readonly stop: number | null;
};

/** The walk through the open design; null while none is made. */
export function useWalking(): WalkState | null {
  return useAsked("walk")?.walking ?? null;
}

export function currentWalk(): WalkState | null {
  return currentAsked("walk")?.walking ?? null;
}

/** Starts a walk to a place, in the place of the spectrum; without a service, to the one that suffers most. */
export function startWalk(
  place: WalkPlace,
  o: { readonly view?: WalkView; readonly service?: WantedService } = {},
): void {
  clearQuestion();
  const walking: WalkState = {
    view: o.view ?? "signal",
    place,
    service: o.service ?? suffering(place),
    extra: [],
    followed: null,
    branch: null,
    stop: null,
  };
  showLower({ type: "walk", walking });
}

/** Changes what is walked; a change of the way begins at its own stop again. */
export function changeWalk(change: Partial<WalkState>): void {
  const walking = currentWalk();
  if (walking) changeLower({ type: "walk", walking: { ...walking, stop: null, ...change } });
}

/** Ends the walk and puts the panes back as they were. */
export function endWalk(): void {
  closeLower("walk");
}

/** Ends the walk because something else was chosen: the panes stay. */
export function dropWalk(): void {
  dropLower("walk");
}

/** The service of a place of which most is missing; the first where all are well. */
function suffering(place: WalkPlace): WantedService {
  const { evaluation, report } = useApp.getState();
  const services = walkServicesAt(evaluation, place);
  const verdict = report.verdicts.find((v) => v.part === place.part);
  const missing = (service: WantedService) => {
    const own = verdict?.services.find((v) => v.service === service);
    return own ? own.wanted - own.got : 0;
  };
  return [...services].sort((a, b) => missing(b) - missing(a))[0] ?? "tv";
}

/** A walk to what is selected, if it is a receiver or an outlet; or to the first that fails; or to the first. */
export function walkFromSelection(view: WalkView = "signal"): void {
  const { evaluation, report, selection } = useApp.getState();
  const [part = ""] = selection.parts;
  const record = evaluation.record(part);
  const isOf = view === "supply" ? suppliedIn(evaluation) : () => true;
  const places = walkPlaces(evaluation).filter(isOf);
  const failing = new Set(report.verdicts.filter((v) => v.state === "fails").map((v) => v.part));
  const place =
    (record && walkPlacesOf(record).find(isOf)) ?? places.find((p) => failing.has(p.part)) ?? places[0];
  if (place) startWalk(place, { view });
}

/** Tells the places on whose line something gives a supply. */
export function suppliedIn(evaluation: Evaluation): (place: WalkPlace) => boolean {
  return (place) => supplySource(evaluation, place) !== null;
}

/** Whether a design has anywhere to walk to. */
export function canWalk(): boolean {
  return walkPlaces(useApp.getState().evaluation).length > 0;
}
