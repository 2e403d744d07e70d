/** Taking steps along a walk. */
import { useApp } from "../../../store/app.ts";
import { changeWalk, currentWalk } from "../../kit/asked/walking.ts";
import { shownWalk } from "./walk.ts";

/** Moves along the way by so many stops; stays at its ends. */
export function stepBy(count: number): void {
  const walking = currentWalk();
  if (!walking) return;
  const { stop, route } = shownWalk(useApp.getState().evaluation, walking);
  goToStop(Math.min(route.stops.length - 1, Math.max(0, stop + count)));
}

export function goToStop(stop: number): void {
  changeWalk({ stop });
}

/** Goes to the stop at a part, if the way passes it. */
export function goToPart(part: string): boolean {
  const walking = currentWalk();
  if (!walking) return false;
  const { route } = shownWalk(useApp.getState().evaluation, walking);
  const at = route.stops.findIndex((s) => s.part === part);
  if (at >= 0) goToStop(at);
  return at >= 0;
}

/** On the canvas the roof is at the left: a supply is walked from right to left. */
const sideways = () => (currentWalk()?.view === "supply" ? -1 : 1);

const KEYS: Readonly<Record<string, () => void>> = {
  ArrowRight: () => stepBy(sideways()),
  ArrowLeft: () => stepBy(-sideways()),
  ArrowDown: () => stepBy(1),
  ArrowUp: () => stepBy(-1),
  Home: () => goToStop(0),
  End: () => goToStop(Number.MAX_SAFE_INTEGER),
};

/** Takes the step that a key means; false for any other key. */
export function handleWalkKey(key: string): boolean {
  const take = KEYS[key];
  take?.();
  return take !== undefined;
}
