/** How far a trainee has come in every case, kept in this browser. */
import { createStore, get as read, type UseStore, set as write } from "idb-keyval";
import { create, type StoreApi, type UseBoundStore } from "zustand";
import {
  type CaseProgress,
  NO_PROGRESS,
  readProgress,
  type TrainingProgress,
  withProgress,
  writeProgress,
} from "../remedies/training/progress.ts";

export type ProgressShelf = {
  readonly read: () => Promise<unknown>;
  readonly write: (text: string) => Promise<void>;
};

export type TrainingState = {
  readonly progress: TrainingProgress;
  /** Why progress is not kept, for the user to know. */
  readonly trouble: string | null;
  /** Reads what was kept; the first call counts. */
  readonly load: () => Promise<void>;
  readonly update: (key: string, step: (progress: CaseProgress) => CaseProgress) => void;
  /** Begins a case afresh. */
  readonly forget: (key: string) => void;
};

const NOT_KEPT =
  "This browser does not let the page store anything: your progress holds in this window only.";

export function createTraining(shelf: ProgressShelf): UseBoundStore<StoreApi<TrainingState>> {
  let loading: Promise<void> | null = null;
  return create<TrainingState>()((set, get) => {
    function keep(progress: TrainingProgress): void {
      if (progress === get().progress) return;
      set({ progress });
      shelf.write(writeProgress(progress)).then(
        () => set({ trouble: null }),
        () => set({ trouble: NOT_KEPT }),
      );
    }

    return {
      progress: {},
      trouble: null,

      load: () => {
        loading ??= shelf.read().then(
          (kept) => {
            if (typeof kept !== "string") return;
            // Whatever was done while the storage was being opened is newer.
            set({ progress: { ...readProgress(kept), ...get().progress } });
          },
          () => set({ trouble: NOT_KEPT }),
        );
        return loading;
      },

      update: (key, step) => {
        const { progress } = get();
        const before = progressOf(progress, key);
        const after = step(before);
        if (after !== before) keep(withProgress(progress, key, after));
      },

      forget: (key) => {
        const { [key]: gone, ...rest } = get().progress;
        if (gone) keep(rest);
      },
    };
  });
}

/** The progress of one case; none for one that nobody has begun. */
export function progressOf(all: TrainingProgress, key: string): CaseProgress {
  return (Object.hasOwn(all, key) ? all[key] : undefined) ?? NO_PROGRESS;
}

/** The shelf of this browser (IndexedDB). Every call may reject: storage can be denied or full. */
function browserShelf(): ProgressShelf {
  let opened: UseStore | undefined;
  // Opened at the first use only: where storage is denied, the attempt itself throws.
  const use = () => {
    opened ??= createStore("downlead-practice", "progress");
    return opened;
  };
  return {
    read: async () => await read("all", use()),
    write: async (text) => await write("all", text, use()),
  };
}

export const useTraining = createTraining(browserShelf());
