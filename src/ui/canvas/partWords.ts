/** What a part is called, for those who do not see its card: the same from near and from afar. */
import type { PartKind } from "../../parts/contract.ts";
import type { PartState } from "./partState.ts";

type Named = { readonly label: string; readonly kind: PartKind; readonly caption: string };

/** "LNB, Universal LNB, 52 dB, Cause"; `mark`: what a preview does to it. */
export function partWords(
  { label, kind, caption }: Named,
  state: PartState | null,
  mark: string | null,
): string {
  const told = [
    // Most parts are named after their kind already.
    ...(label.startsWith(kind.name) ? [] : [kind.name]),
    caption,
    // A culprit that a receiver is, too, says how that stands.
    ...(state?.isCulprit && state.mark !== "alert" ? ["Cause"] : []),
    state?.word ?? "",
    mark ?? "",
  ];
  return [label, ...told.filter((words) => words !== "")].join(", ");
}
