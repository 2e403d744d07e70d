/** How far a trainee has come in every case, kept in this browser. */
import { create, type StoreApi, type UseBoundStore } from "zustand";
import {
  type CaseProgress,
  NO_PROGRESS,
  readProgress,
  type TrainingProgress,
  withProgress,
  writeProgress,
} from "../remedies/training/progress.ts";
import { browserSharedValue, createSharedValue, type SharedValuePlace } from "./documents/sharedValue.ts";

export type TrainingState = {
  readonly progress: TrainingProgress;
  /** Why progress is not kept, for the user to know. */
  readonly trouble: string | null;
  /** Reads what was kept, and follows other windows from then on; the first call counts. */
  readonly load: () => Promise<void>;
  readonly update: (key: string, step: (progress: CaseProgress) => CaseProgress) => void;
  /** Begins a case afresh. */
  readonly forget: (key: string) => void;
  /** Adds cases that nobody has begun here; yields how many. */
  readonly takeIn: (progress: TrainingProgress) => number;
};

const NOT_KEPT = "This browser’s storage cannot be used now: your progress is kept in this window only.";

export function createTraining(place: SharedValuePlace): UseBoundStore<StoreApi<TrainingState>> {
  return create<TrainingState>()((set, get) => {
    const kept = createSharedValue<TrainingProgress>({
      place,
      read: readProgress,
      write: writeProgress,
      show: (progress) => set({ progress }),
      tell: (isKept) => set({ trouble: isKept ? null : NOT_KEPT }),
    });
    return {
      progress: {},
      trouble: null,
      load: kept.load,

      update: (key, step) => {
        const before = progressOf(get().progress, key);
        if (step(before) === before) return;
        // Another window may have come further in this case: the step is taken from there.
        kept.change((all) => withProgress(all, key, step(progressOf(all, key))));
      },

      forget: (key) => {
        if (!Object.hasOwn(get().progress, key)) return;
        kept.change(({ [key]: _, ...rest }) => rest);
      },

      takeIn: (progress) => {
        const count = casesToAdd(get().progress, progress).length;
        if (count > 0) kept.change((all) => ({ ...progress, ...all }));
        return count;
      },
    };
  });
}

/** Cases of the other progress that nobody has begun here. */
export function casesToAdd(here: TrainingProgress, other: TrainingProgress): readonly string[] {
  return Object.keys(other).filter((key) => !Object.hasOwn(here, key));
}

/** The progress of one case; none for one that nobody has begun. */
export function progressOf(all: TrainingProgress, key: string): CaseProgress {
  return (Object.hasOwn(all, key) ? all[key] : undefined) ?? NO_PROGRESS;
}

export const useTraining = createTraining(browserSharedValue("practice"));
