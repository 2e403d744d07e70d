/** What a part is called, for those who do not see its card: the same from near and from afar. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { PartState } from "./partState.ts";

/** "LNB, Universal LNB, 52 dB, Cause"; `mark`: what a preview does to it. */
export function partWords(
  { part, kind, options }: Pick<PartRecord, "part" | "kind" | "options">,
  state: PartState | null,
  mark: string | null,
): string {
  const told = [
    // Most parts are named after their kind already.
    ...(part.label.startsWith(kind.name) ? [] : [kind.name]),
    kind.caption(options),
    // A culprit that a receiver is, too, says how that stands.
    ...(state?.isCulprit && state.mark !== "alert" ? ["Cause"] : []),
    state?.word ?? "",
    mark ?? "",
  ];
  return [part.label, ...told.filter((words) => words !== "")].join(", ");
}
