/** From what works and what does not, back to the single faults that would explain it. */
import type { Design } from "../../design/design.ts";
import { partsBeyond } from "../../design/lookup.ts";
import { evaluate } from "../../evaluate/evaluate.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { type Fault, likelihoodOf } from "./fault.ts";
import { faults } from "./list.ts";
import { detailedSymptoms, type Observation, type State, type Symptom, symptomKey } from "./symptoms.ts";

/** Faults that nobody could tell apart by looking at screens: measuring must tell. */
export type Suspicion = {
  /** The most usual first. */
  readonly faults: readonly Fault[];
  /** "exact": explains every observation. "near": all but some. */
  readonly match: "exact" | "near";
  /** How far the observations are from what these faults would do: 0 is exact; 1 for each half-way miss. */
  readonly distance: number;
  readonly reasons: Reasons;
};

/** Observations, by what the faults of a suspicion would do there. */
export type Reasons = {
  /** Missing, and it would be. */
  readonly explained: readonly Observation[];
  /** Works, and it would. */
  readonly spared: readonly Observation[];
  /** Missing, and it would work. */
  readonly unexplained: readonly Observation[];
  /** Works, and something would be missing. */
  readonly contradicted: readonly Observation[];
};

export type DiagnosisCount = {
  /** Faults tried so far, and in all. */
  readonly tried: number;
  readonly of: number;
};

/** What nothing at all explains is left out: a fault must account for half of what fails. */
const LEAST_EXPLAINED = 0.5;
/** Beyond so many suspicions nobody reads on. */
const MOST_SUSPICIONS = 12;

/**
 * Tries every single fault that could have to do with what fails. Yields after each trial, so that a worker can
 * stop it; returns the suspicions, the best first.
 */
export function* diagnose(
  design: Design,
  observations: readonly Observation[],
): Generator<DiagnosisCount, readonly Suspicion[]> {
  const sound = evaluate(design);
  const seen = observations.map((o) => ({ key: symptomKey(o), state: stateOf(o) }));
  if (seen.every(({ state }) => state === "works")) return [];
  const candidates = concerned(design, observations);
  const groups = new Map<string, Group>();
  let tried = 0;
  for (const fault of candidates) {
    const symptoms = symptomsUnder(design, fault, sound);
    tried += 1;
    const states = new Map(symptoms.map((s) => [symptomKey(s), s.state]));
    const distance = distanceOf(seen, states);
    if (explains(seen, states)) gather(groups, fault, symptoms, distance);
    yield { tried, of: candidates.length };
  }
  return [...groups.values()]
    .sort((a, b) => a.distance - b.distance || weightOf(b) - weightOf(a))
    .slice(0, MOST_SUSPICIONS)
    .map(({ faults: found, symptoms, distance }) => ({
      faults: [...found].sort((a, b) => likelihoodOf(b) - likelihoodOf(a)),
      match: distance === 0 ? "exact" : "near",
      distance,
      reasons: reasonsFor(observations, symptoms),
    }));
}

function reasonsFor(observations: readonly Observation[], symptoms: readonly Symptom[]): Reasons {
  const predicted = new Map(symptoms.map((s) => [symptomKey(s), s.state]));
  const those = (isSeenWorking: boolean, wouldWork: boolean) =>
    observations.filter((o) => {
      const state = predicted.get(symptomKey(o));
      return state !== undefined && (o.works === true) === isSeenWorking && (state === "works") === wouldWork;
    });
  return {
    explained: those(false, false),
    spared: those(true, true),
    unexplained: those(false, true),
    contradicted: those(true, false),
  };
}

type Group = { faults: Fault[]; readonly symptoms: readonly Symptom[]; readonly distance: number };

function gather(
  groups: Map<string, Group>,
  fault: Fault,
  symptoms: readonly Symptom[],
  distance: number,
): void {
  const key = symptoms.map((s) => s.got).join();
  const group = groups.get(key);
  if (group) group.faults.push(fault);
  else groups.set(key, { faults: [fault], symptoms, distance });
}

/** A group with one usual fault goes before one with many rare ones. */
function weightOf(group: Group): number {
  return group.faults.reduce((most, fault) => Math.max(most, likelihoodOf(fault)), 0);
}

function symptomsUnder(design: Design, fault: Fault, sound: Evaluation): readonly Symptom[] {
  return detailedSymptoms({ evaluation: evaluate(fault.apply(design), sound) }, { evaluation: sound });
}

function stateOf({ works }: Observation): State {
  return works === "partial" ? "partial" : works ? "works" : "fails";
}

type Seen = { readonly key: string; readonly state: State };
const STEP: Readonly<Record<State, number>> = { works: 0, partial: 1, fails: 2 };

/** Sum over the observations: 1 for "partial" against either other state, 2 for the opposite. */
function distanceOf(seen: readonly Seen[], states: ReadonlyMap<string, State>): number {
  return seen.reduce((sum, { key, state }) => {
    const predicted = states.get(key);
    return predicted ? sum + Math.abs(STEP[predicted] - STEP[state]) : sum;
  }, 0);
}

function explains(seen: readonly Seen[], states: ReadonlyMap<string, State>): boolean {
  const failing = seen.filter(({ state }) => state !== "works");
  const explained = failing.filter(({ key }) => states.get(key) !== "works" && states.has(key));
  return explained.length >= Math.max(1, failing.length * LEAST_EXPLAINED);
}

/**
 * Faults that can reach what fails: on the way to it, or on a line that hangs on the same way (a receiver that
 * holds a switch, a short that takes the supply away).
 */
function concerned(design: Design, observations: readonly Observation[]): readonly Fault[] {
  const failing = observations.filter((o) => o.works !== true).map((o) => o.part);
  const above = partsBeyond(design.wires, failing, "upstream");
  const around = partsBeyond(design.wires, above, "downstream");
  return faults(design).filter((fault) => fault.parts.some((id) => around.has(id)));
}
