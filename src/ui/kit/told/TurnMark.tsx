import { ArrowDown, ArrowDownUp, ArrowUp, Equal, type LucideIcon, Minus, Plus } from "lucide-react";
import type { PlaceChange } from "../../../remedies/compare.ts";

type Look = { readonly icon: LucideIcon; readonly words: string; readonly tone: string };

const LOOKS: Readonly<Record<PlaceChange["change"], Look>> = {
  gained: { icon: ArrowUp, words: "gains", tone: "ok" },
  lost: { icon: ArrowDown, words: "loses", tone: "error" },
  mixed: { icon: ArrowDownUp, words: "gains and loses", tone: "warning" },
  same: { icon: Equal, words: "as before", tone: "note" },
  added: { icon: Plus, words: "new", tone: "note" },
  removed: { icon: Minus, words: "gone", tone: "warning" },
};

/** What becomes of a receiver or an outlet, in a word with a mark. */
export function TurnMark({ change }: { readonly change: PlaceChange["change"] }) {
  const { icon: Icon, words, tone } = LOOKS[change];
  return (
    <span className={`badge ${tone}`}>
      <Icon size={12} aria-hidden /> {words}
    </span>
  );
}
