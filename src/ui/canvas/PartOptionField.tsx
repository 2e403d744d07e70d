import type { PartId } from "../../design/design.ts";
import type { FieldMeta } from "../../parts/fields.ts";
import { useApp } from "../../store/app.ts";
import { OptionField } from "../kit/fields/OptionField.tsx";
import { changeOption } from "./optionEdits.ts";

type Props = {
  readonly part: PartId;
  readonly option: string;
  readonly meta: FieldMeta;
  readonly value: unknown;
  /** Key of the one step that all the fields of a form make together. */
  readonly step?: string;
};

/** An option of a part, changed as one undo step for as long as one stays in the field. */
export function PartOptionField({ part, option, meta, value, step }: Props) {
  return (
    <OptionField
      meta={meta}
      value={value}
      onTakeBack={(visit) => useApp.getState().takeBack(step ?? visit)}
      onTry={(next, visit) => {
        const lasting = step ?? visit;
        return changeOption(
          [part],
          option,
          next,
          lasting ? { merge: lasting, lasts: true } : { merge: `option ${part} ${option}` },
        );
      }}
    />
  );
}
