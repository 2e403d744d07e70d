/** The best way through a case, calculated beside the page while the trainee is at work: par, and the debriefing. */
import { create } from "zustand";
import type { Design } from "../design/design.ts";
import type { Fault } from "../remedies/faults/fault.ts";
import { faultOf, faults } from "../remedies/faults/list.ts";
import { type MeasurementPath, measurementPath } from "../remedies/faults/measurementPath.ts";
import type { Reading } from "../remedies/faults/reading.ts";
import type { OpenedCase } from "../remedies/training/case.ts";
import { type PlainMeasurement, plainMeasurement } from "./searchDiagnosis.ts";
import { type SearchHandle, startSearch } from "./searchRun.ts";

export type PathTask = { readonly design: Design; readonly fault: string };

/** Faults go by their ids, since they cannot be copied to another thread. */
export type PlainPath = {
  readonly suspects: readonly string[];
  readonly steps: readonly {
    readonly measurement: PlainMeasurement;
    readonly reading: Reading;
    readonly excluded: readonly string[];
    readonly left: readonly string[];
  }[];
};

/** `path` is null until it is known. */
export type PathSearch = { readonly path: PlainPath | null };

export function* searchPath({ design, fault: id }: PathTask): Generator<PathSearch, PathSearch, void> {
  const fault = faultOf(design, id);
  if (!fault) throw new Error(`no fault ${id}`);
  const search = measurementPath(design, fault);
  let step = search.next();
  for (; !step.done; step = search.next()) yield { path: null };
  return { path: plainPath(step.value) };
}

function plainPath({ suspects, steps }: MeasurementPath): PlainPath {
  const ids = (those: readonly Fault[]) => those.map((f) => f.id);
  return {
    suspects: ids(suspects),
    steps: steps.map(({ measurement, reading, excluded, left }) => ({
      measurement: plainMeasurement(measurement),
      reading,
      excluded: ids(excluded),
      left: ids(left),
    })),
  };
}

/** Measurements that the best way needs; where what is noticed leaves one fault only, one to prove it. */
export function parOf(path: PlainPath): number {
  return Math.max(1, path.steps.length);
}

/** The suspects of a path as faults of its design. */
export function suspectsOf({ design }: OpenedCase, path: PlainPath): readonly Fault[] {
  const wanted = new Set(path.suspects);
  return faults(design).filter((fault) => wanted.has(fault.id));
}

type PathState = {
  readonly opened: OpenedCase | null;
  readonly path: PlainPath | null;
  readonly start: (opened: OpenedCase) => void;
  readonly stop: () => void;
};

export const usePracticePath = create<PathState>()((set, get) => {
  let handle: SearchHandle | null = null;
  const stop = () => {
    handle?.stop();
    handle = null;
  };
  return {
    opened: null,
    path: null,
    start: (opened) => {
      if (get().opened === opened) return;
      stop();
      set({ opened, path: null });
      handle = startSearch("path", { design: opened.design, fault: opened.fault.id }, (event) => {
        if (event.type !== "failed" && get().opened === opened) set({ path: event.progress.path });
      });
    },
    stop: () => {
      stop();
      set({ opened: null, path: null });
    },
  };
});
