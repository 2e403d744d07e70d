import { Replace } from "lucide-react";
import { replaceKind } from "../../../design/edits/replace.ts";
import type { PartRecord } from "../../../evaluate/evaluation.ts";
import { useApp } from "../../../store/app.ts";
import { KindPicker } from "../../canvas/KindPicker.tsx";
import { roomy } from "../../canvas/place.ts";

/** Puts another kind in the part's place. */
export function ReplacePicker({ record }: { readonly record: PartRecord }) {
  const { part, kind } = record;
  return (
    <KindPicker
      kind={kind}
      label="Replace with"
      button={
        <>
          <Replace size={16} aria-hidden /> Replace with…
        </>
      }
      onPick={(next) => {
        const { design, change } = useApp.getState();
        change(roomy(design, replaceKind(design, part.id, next)));
      }}
    />
  );
}
