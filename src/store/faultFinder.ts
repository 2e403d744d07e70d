/** The search for a fault as the page sees it: what was seen and measured, and what is suspected. */
import { create } from "zustand";
import type { Design } from "../design/design.ts";
import type { Taken } from "../remedies/faults/bestMeasurement.ts";
import { type Observation, type SymptomPlace, symptomKey } from "../remedies/faults/symptoms.ts";
import { useApp } from "./app.ts";
import type { DiagnosisProgress, PlainSuspicion } from "./searchDiagnosis.ts";
import { type SearchHandle, startSearch } from "./searchRun.ts";

export type FinderStatus = "idle" | "running" | "done" | "stopped" | "failed";
export type Seen = Observation["works"];

export type FinderState = {
  /** By `symptomKey`; what nobody has looked at is not in it. */
  readonly seen: ReadonlyMap<string, Observation>;
  readonly taken: readonly Taken[];
  readonly status: FinderStatus;
  readonly progress: DiagnosisProgress | null;
  readonly problem: string | null;
  /** The document that was searched. */
  readonly document: Design | null;

  /** Notes what somebody saw; null: not looked at. What was found before no longer holds then. */
  readonly see: (at: SymptomPlace, works: Seen | null) => void;
  /** Everything that nobody has said anything of works. */
  readonly restWorks: (all: readonly SymptomPlace[]) => void;
  readonly start: () => void;
  readonly stop: () => void;
  readonly take: (reading: Taken) => void;
  readonly takeBack: (index: number) => void;
  readonly clear: () => void;
};

const NOT_SEARCHED = { taken: [], status: "idle", progress: null, problem: null, document: null } as const;

export const useFinder = create<FinderState>()((set, get) => {
  let handle: SearchHandle | null = null;

  function halt(): void {
    handle?.stop();
    handle = null;
  }

  function search(known: readonly PlainSuspicion[] | null, taken: readonly Taken[]): void {
    halt();
    // What is shown meanwhile is one fault; what is searched is the design without any.
    useApp.getState().closePreview();
    const { design } = useApp.getState();
    set({ status: "running", progress: null, problem: null, document: design, taken });
    const task = {
      type: "diagnosis",
      design,
      observations: [...get().seen.values()],
      known,
      taken: taken.map(({ at, reading, asked = null }) => ({ at, reading, asked })),
    } as const;
    handle = startSearch("diagnosis", task, (event) => {
      if (event.type === "failed") set({ status: "failed", problem: event.reason });
      else set({ progress: event.progress, ...(event.type === "done" ? { status: "done" as const } : {}) });
    });
  }

  /** Only as long as the document is the one that was searched. */
  const knownOf = () => {
    const { document, progress } = get();
    return document === useApp.getState().design ? (progress?.suspicions ?? null) : null;
  };

  return {
    seen: new Map(),
    ...NOT_SEARCHED,

    see: (place, works) => {
      halt();
      const seen = new Map(get().seen);
      const { part, service, plane, tuner } = place;
      const key = symptomKey(place);
      if (works === null) seen.delete(key);
      else
        seen.set(key, {
          part,
          service,
          ...(plane === undefined ? {} : { plane }),
          ...(tuner === undefined ? {} : { tuner }),
          works,
        });
      set({ seen, ...NOT_SEARCHED });
    },

    restWorks: (all) => {
      halt();
      const seen = new Map(get().seen);
      const troubled = new Set(
        [...seen.values()].filter((o) => o.works !== true).map((o) => `${o.part}|${o.service}`),
      );
      for (const { part, service } of all) {
        const key = symptomKey({ part, service });
        // Where a plane or a tuner fails, the service as a whole is not said to work.
        if (!seen.has(key) && !troubled.has(key)) seen.set(key, { part, service, works: true });
      }
      set({ seen, ...NOT_SEARCHED });
    },

    start: () => search(null, []),

    stop: () => {
      halt();
      if (get().status === "running") set({ status: "stopped" });
    },

    take: (reading) => search(knownOf(), [...get().taken, reading]),
    takeBack: (index) =>
      search(
        knownOf(),
        get().taken.filter((_, i) => i !== index),
      ),

    clear: () => {
      halt();
      set({ seen: new Map(), ...NOT_SEARCHED });
    },
  };
});
