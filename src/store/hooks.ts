/**
 * Narrow views of the store. Each returns an object that keeps its identity while its own part or wire
 * is unchanged, so that of a thousand cards and strips only those redraw that something happened to.
 */
import { useStore } from "zustand";
import { useShallow } from "zustand/react/shallow";
import { type Design, type Part, type Wire, wireId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { type FailingWays, failingWays } from "../findings/failingWays.ts";
import type { Cause, Finding, Report, Severity, Verdict } from "../findings/finding.ts";
import { resultWords, verdictSentence } from "../sentences/verdict.ts";
import { SILENCE, type Spectrum } from "../signal/band.ts";
import { remembered } from "../signal/remember.ts";
import { useApp } from "./app.ts";

/** The design that is shown: the document, or the preview while there is one. */
export function useShownDesign(): Design {
  return useApp((s) => s.evaluation.design);
}

/** What there is to say of the document itself, also while a preview is shown. */
export function useDocumentReport(): Report {
  return useApp((s) => s.preview?.document.report ?? s.report);
}

export function useRecord(id: string): PartRecord | undefined {
  return useApp((s) => s.evaluation.record(id));
}

export function usePart(id: string): Part | undefined {
  return useApp((s) => s.evaluation.record(id)?.part);
}

export function useWire(id: string): Wire | undefined {
  return useApp((s) => wireOf(s.evaluation.design, id));
}

export function useSpectrum(id: string): Spectrum {
  return useApp((s) => {
    const wire = wireOf(s.evaluation.design, id);
    return wire ? s.evaluation.spectrum(wire) : SILENCE;
  });
}

/** Findings that concern a part (by its id) or a wire (by its `wireId`), worst first. */
export function useFindingsFor(id: string): readonly Finding[] {
  return useApp(useShallow((s) => findingsOf(s.report).get(id) ?? NONE));
}

/** The verdict on a receiver or outlet; the index is built once for each report. */
export function verdictOf(report: Report, part: string): Verdict | undefined {
  return verdictsOf(report).get(part);
}

export function useVerdict(part: string): Verdict | undefined {
  return useApp((s) => verdictsOf(s.report).get(part));
}

/** How a receiver or outlet stands, with its sentence. */
export type PlainVerdict = Pick<Verdict, "state" | "idle"> & {
  readonly sentence: string;
  /** The same in three words, for a tile. */
  readonly result: string;
};

/** How a receiver or outlet stands; keeps its identity while that reads the same. */
export function usePlainVerdict(part: string): PlainVerdict | undefined {
  return useApp(
    useShallow((s) => {
      const verdict = verdictsOf(s.report).get(part);
      if (!verdict) return undefined;
      const { state, idle } = verdict;
      return {
        state,
        ...(idle ? { idle } : {}),
        sentence: verdictSentence(verdict, s.evaluation),
        result: resultWords(verdict),
      };
    }),
  );
}

/** The cause that a finding belongs to; undefined for a finding of another design than the one shown. */
export function useCauseOf(finding: Finding): Cause | undefined {
  return useApp((s) => causesByFinding(s.report).get(finding.id));
}

/** The gravest cause of which a part is the culprit; undefined where it is none. */
export function useCulpritOf(part: string): Severity | undefined {
  return useApp((s) => culpritsOf(s.report).get(part));
}

/** Every culprit, with the gravest cause that it is of. */
export function useCulprits(): ReadonlyMap<string, Severity> {
  return useApp((s) => culpritsOf(s.report));
}

/** All parts and wires along which failures run. */
export function useFailingWays(): FailingWays {
  return useApp((s) => failingWaysOf(s.report, s.evaluation));
}

/** Whether a failure runs along a wire, from its culprit to a receiver. */
export function useIsFailingWire(id: string): boolean {
  return useApp((s) => failingWaysOf(s.report, s.evaluation).wires.has(id));
}

/** Whether a failure runs through a part. */
export function useIsFailingPart(id: string): boolean {
  return useApp((s) => failingWaysOf(s.report, s.evaluation).parts.has(id));
}

const failing = new WeakMap<Report, FailingWays>();

function failingWaysOf(report: Report, evaluation: Evaluation): FailingWays {
  return remembered(failing, report, () => failingWays(report, evaluation));
}

const NONE: readonly Finding[] = [];

/** The wire with this id; the index is built once for each design. */
export function wireOf(design: Design, id: string): Wire | undefined {
  return wiresOf(design).get(id);
}

const wiresOf = once((design: Design) => new Map(design.wires.map((w) => [wireId(w), w] as const)));
const verdictsOf = once((report: Report) => new Map(report.verdicts.map((v) => [v.part, v] as const)));

const causesByFinding = once(
  ({ causes }: Report) =>
    new Map(causes.flatMap((cause) => cause.findings.map((finding) => [finding.id, cause] as const))),
);

// Worst first, so what is put in last, and stays, is the gravest.
const culpritsOf = once(
  ({ causes }: Report): ReadonlyMap<string, Severity> =>
    new Map([...causes].reverse().map(({ root, severity }) => [root.parts[0], severity] as const)),
);

/** Findings by part id and by wire id. */
export const findingsOf = once((report: Report): ReadonlyMap<string, readonly Finding[]> => {
  const index = new Map<string, Finding[]>();
  for (const finding of report.findings) {
    for (const id of new Set([finding.at.part, ...finding.parts, ...finding.wires])) {
      const list = index.get(id);
      if (list) list.push(finding);
      else index.set(id, [finding]);
    }
  }
  return index;
});

/** Works a thing out once for each object it is asked about. */
function once<K extends object, V>(work: (key: K) => V): (key: K) => V {
  const known = new WeakMap<K, V>();
  return (key) => {
    let value = known.get(key);
    if (value === undefined) {
      value = work(key);
      known.set(key, value);
    }
    return value;
  };
}

/** Whether there is something to undo and to redo. */
export function useHistory(): { readonly canUndo: boolean; readonly canRedo: boolean } {
  const canUndo = useStore(useApp.temporal, (s) => s.pastStates.length > 0);
  const canRedo = useStore(useApp.temporal, (s) => s.futureStates.length > 0);
  return { canUndo, canRedo };
}
