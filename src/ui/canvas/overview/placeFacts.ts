/** What there is to show of a place; keeps its identity while it reads the same. */
import { useShallow } from "zustand/react/shallow";
import type { PartId } from "../../../design/design.ts";
import type { FedPlace } from "../../../design/feeding/feedingGroups.ts";
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import type { Verdict } from "../../../findings/finding.ts";
import { judgedAt, type PlaceState, placeState } from "../../../findings/placeState.ts";
import { placeSentence, resultFigures } from "../../../sentences/placeName.ts";
import { resultWords } from "../../../sentences/verdict.ts";
import { SILENCE, type Spectrum } from "../../../signal/band.ts";
import { useApp } from "../../../store/app.ts";
import { verdictOf } from "../../../store/hooks.ts";
import { partsOfPlace } from "./skeleton.ts";

export type PlaceFacts = {
  readonly state: PlaceState;
  readonly sentence: string;
  /** What is missing: "60 of 80 sat"; "" where nothing is. */
  readonly lacking: string;
  readonly isSelected: boolean;
  /** What arrives at its first outlet, or at its receiver. */
  readonly spectrum: Spectrum;
};

export function usePlaceFacts(place: FedPlace, label: string): PlaceFacts {
  return useApp(
    useShallow((s): PlaceFacts => {
      const of = (id: PartId) => verdictOf(s.report, id);
      const verdicts = judgedAt(place, of);
      const state = placeState(place, of);
      const [worst] = verdicts;
      return {
        state,
        sentence: placeSentence({ label, state, verdicts, cableM: place.cableM }),
        lacking: worst?.state === "fails" ? resultWords(worst) : "",
        isSelected: partsOfPlace(place).some((id) => s.selection.parts.includes(id)),
        spectrum: arriving(s.evaluation, place.key),
      };
    }),
  );
}

/** Of several inputs the first one with a wire. */
function arriving(evaluation: Evaluation, id: PartId): Spectrum {
  const record = evaluation.record(id);
  const input = record?.ports.find((port) => port.side === "in" && record.joined[port.id]);
  return (input && record?.inputs[input.id]) ?? SILENCE;
}

export type ReceiverFacts = {
  readonly state: PlaceState;
  /** "80/80". */
  readonly figures: string;
};

export function useReceiverFacts(id: PartId): ReceiverFacts {
  return useApp(
    useShallow((s): ReceiverFacts => {
      const verdict = verdictOf(s.report, id);
      return { state: stateOf(verdict), figures: verdict && !verdict.idle ? resultFigures(verdict) : "–" };
    }),
  );
}

function stateOf(verdict: Verdict | undefined): PlaceState {
  return !verdict || verdict.idle ? "idle" : verdict.state;
}
