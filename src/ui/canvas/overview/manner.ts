/** What the things of an overview are called, and what a press on them does: the desk selects, a phone opens. */
import { createContext } from "react";
import type { PartId } from "../../../design/design.ts";
import type { FedPlace } from "../../../design/feeding/feedingGroups.ts";
import type { PlaceState } from "../../../findings/placeState.ts";
import { useApp } from "../../../store/app.ts";
import { partsOfPlace } from "./skeleton.ts";

export type OverviewManner = {
  /** A press leaves a thing pressed. */
  readonly selects: boolean;
  readonly pressPart: (part: PartId) => void;
  readonly pressPlace: (place: FedPlace) => void;
  /** How a place is read aloud. */
  readonly sentenceOf: (place: {
    readonly label: string;
    readonly state: PlaceState;
    /** Name, state, what is missing, and cable. */
    readonly sentence: string;
  }) => string;
};

const DESK: OverviewManner = {
  selects: true,
  pressPart: (part) => useApp.getState().select({ parts: [part] }),
  pressPlace: (place) => useApp.getState().select({ parts: partsOfPlace(place) }),
  sentenceOf: ({ sentence }) => sentence,
};

export const MannerContext = createContext(DESK);
