/** Values that several parts have in common, set for all of them at once. */

import { isSameValue } from "../../../design/options.ts";
import type { PartRecord } from "../../../evaluate/evaluation.ts";
import type { FieldMeta } from "../../../parts/fields.ts";
import { describedOptions, doesCount } from "../../../parts/meanings.ts";
import { useApp } from "../../../store/app.ts";
import { changeOption } from "../../canvas/optionEdits.ts";
import { OptionField } from "../../kit/fields/OptionField.tsx";

export function ManyFields({ parts }: { readonly parts: readonly string[] }) {
  const evaluation = useApp((s) => s.evaluation);
  const isPreview = useApp((s) => s.preview !== null);
  const records = parts.flatMap((id) => evaluation.record(id) ?? []);
  const fields = commonFields(records);
  if (records.length < 2 || fields.length === 0) return null;
  return (
    <section aria-label="Values of all of them">
      <h3>Values of all of them</h3>
      <fieldset className="options" disabled={isPreview}>
        {fields.map(({ key, meta, value, isSame }) => (
          <OptionField
            key={`${parts.join(" ")} ${key}`}
            meta={isSame ? meta : { ...meta, help: "Not the same in all of them now." }}
            value={value}
            onTakeBack={(visit) => useApp.getState().takeBack(visit)}
            onTry={(next, visit) =>
              changeOption(parts, key, next, visit ? { merge: visit, lasts: true } : { merge: `many ${key}` })
            }
          />
        ))}
      </fieldset>
    </section>
  );
}

type CommonField = {
  readonly key: string;
  readonly meta: FieldMeta;
  /** Of the first part. */
  readonly value: unknown;
  readonly isSame: boolean;
};

/** Fields that every part has, under one name and with one form; tables are each part's own. */
function commonFields(records: readonly PartRecord[]): readonly CommonField[] {
  const [first, ...others] = records;
  if (!first) return [];
  return [...describedOptions(first.kind)].flatMap(([key, meta]): CommonField[] => {
    if (meta.control === "rows" || meta.advanced) return [];
    const isCommon = others.every(({ kind }) => {
      const other = describedOptions(kind).get(key);
      return (
        other?.control === meta.control &&
        other.label === meta.label &&
        isSameValue(other.choices, meta.choices)
      );
    });
    if (!isCommon || !records.every(({ options }) => doesCount(meta, options))) return [];
    const value = first.options[key];
    return [{ key, meta, value, isSame: others.every(({ options }) => isSameValue(options[key], value)) }];
  });
}
