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
};

/** An option of a part, changed as one undo step for as long as one stays in the field. */
export function PartOptionField({ part, option, meta, value }: Props) {
  return (
    <OptionField
      meta={meta}
      value={value}
      onTakeBack={(visit) => useApp.getState().takeBack(visit)}
      onTry={(next, visit) =>
        changeOption(
          [part],
          option,
          next,
          visit ? { merge: visit, lasts: true } : { merge: `option ${part} ${option}` },
        )
      }
    />
  );
}
