import { CircleHelp } from "lucide-react";
import { partById } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import type { Job } from "../../../parts/trade.ts";
import { useApp } from "../../../store/app.ts";
import { KindPicker } from "../../canvas/KindPicker.tsx";
import { askSwap } from "./swapState.ts";

const LABELS: Partial<Readonly<Record<Job, string>>> = {
  converter: "What breaks if I swap this LNB?",
  "switch unit": "What breaks if I swap this multiswitch?",
  "position switch": "What breaks if I swap this switch?",
  receiver: "What breaks if I swap this receiver?",
};

/** Asks what a swap would break before anything is changed. */
export function SwapPicker({ part }: { readonly part: string }) {
  // Of the document: a preview may show the part as something else.
  const kind = useApp((s) => kindOf(partById(s.design, part)?.kind ?? ""));
  if (!kind) return null;
  const label = LABELS[kind.trade.job] ?? "What breaks if I swap this part?";
  return (
    <KindPicker
      kind={kind}
      label={label}
      button={
        <>
          <CircleHelp size={16} aria-hidden /> {label}
        </>
      }
      onPick={(next) => askSwap({ part, kind: next })}
    />
  );
}
