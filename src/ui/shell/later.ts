/** Loads what the first drawing does without (`afterwards.ts`): at leisure after it, or at once when it is asked for. */
import { useEffect, useSyncExternalStore } from "react";
import { useApp } from "../../store/app.ts";
import { afterLayout } from "../kit/afterLayout.ts";

type Afterwards = typeof import("./afterwards.ts");

let loaded: Afterwards | null = null;
let loading: Promise<Afterwards> | null = null;
const listeners = new Set<() => void>();

/** What failed to load is tried again when it is asked for the next time. */
export function loadAfterwards(): Promise<Afterwards> {
  loading ??= import("./afterwards.ts").then(
    (all) => {
      loaded = all;
      for (const tell of listeners) tell();
      return all;
    },
    (problem: unknown) => {
      loading = null;
      throw problem;
    },
  );
  return loading;
}

/** Null until it is there. Nothing is drawn in its place meanwhile: what asked for it stays as it is. */
export function useAfterwards({ isWanted }: { readonly isWanted: boolean }): Afterwards | null {
  const there = useSyncExternalStore(subscribe, current);
  useEffect(() => {
    if (isWanted && !there) loadAfterwards().catch(tellFailure);
  }, [isWanted, there]);
  return there;
}

/** A moment after the first drawing. Whoever is offline then hears of it only when something is asked for. */
export function loadAtLeisure(): void {
  afterLayout(() => setTimeout(() => void loadAfterwards().catch(() => {}), LEISURE_MS));
}

const LEISURE_MS = 500;

function current(): Afterwards | null {
  return loaded;
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function tellFailure(): void {
  useApp
    .getState()
    .notify("A part of the app did not load. Check the connection, then try once more.", "error");
}
