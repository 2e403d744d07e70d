/** How the state of a receiver or outlet looks: a mark, a word and a tone, so that colour is never alone. */
import { Check, CircleDashed, type LucideIcon, TriangleAlert, X } from "lucide-react";
import type { Verdict } from "../../../findings/finding.ts";
import type { PlaceState } from "../../../findings/placeState.ts";
import { stateName } from "../../../sentences/verdict.ts";

export type StateLook = {
  readonly Icon: LucideIcon;
  /** "works" */
  readonly word: string;
  readonly tone: "ok" | "warn" | "bad" | "idle";
};

export function stateLook(verdict: Pick<Verdict, "state" | "idle">): StateLook {
  const word = stateName(verdict);
  if (verdict.idle) return { Icon: CircleDashed, word, tone: "idle" };
  switch (verdict.state) {
    case "works":
      return { Icon: Check, word, tone: "ok" };
    case "edge":
      return { Icon: TriangleAlert, word, tone: "warn" };
    case "fails":
      return { Icon: X, word, tone: "bad" };
  }
}

/** Of a flat or a room as a whole; idle where nothing there is judged. */
export function placeLook(state: PlaceState): StateLook {
  return PLACE_LOOKS[state];
}

const PLACE_LOOKS: Readonly<Record<PlaceState, StateLook>> = {
  fails: stateLook({ state: "fails" }),
  edge: stateLook({ state: "edge" }),
  works: stateLook({ state: "works" }),
  idle: stateLook({ state: "works", idle: "nothing connected" }),
};
