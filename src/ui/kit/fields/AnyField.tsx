import type { FieldProps } from "./field.ts";
import { NumberField } from "./NumberField.tsx";
import { ChoiceField, SwitchField, TextField } from "./plainFields.tsx";
import { RowsField } from "./RowsField.tsx";

/** The control that a field's description asks for. */
export function AnyField(props: FieldProps & { readonly onProblem: (problem: string | null) => void }) {
  switch (props.meta.control) {
    case "number":
      return <NumberField {...props} />;
    case "choice":
      return <ChoiceField {...props} />;
    case "switch":
      return <SwitchField {...props} />;
    case "rows":
      return <RowsField {...props} />;
    default:
      return <TextField {...props} />;
  }
}
