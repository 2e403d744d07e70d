/** Settings of a part, as it stands, with which supply would come or pass: found by trying them out. */
import { z } from "zod";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { PowerTreatment } from "../../parts/contract.ts";
import { fieldMeta } from "../../parts/fields.ts";

/** An option of a part, and a value that it could have. */
export type Setting = { readonly option: string; readonly value: string | boolean };

export type Tried = Setting & { readonly power: PowerTreatment };

/**
 * The first setting with which a part treats supply as wished, if possible one that stops none that it passes now. Only
 * what leaves its ports and its own needs as they are: anything else is another type of part, not a setting of this one.
 */
export function settingFor(
  record: PartRecord,
  isWished: (power: PowerTreatment) => boolean,
): Tried | undefined {
  const { kind, options, ports, power } = record;
  let first: Tried | undefined;
  for (const [option, schema] of Object.entries(kind.options.shape))
    for (const value of otherValues(schema, options[option])) {
      const changed = { ...options, [option]: value };
      const tried = kind.power(changed);
      if (!isWished(tried) || (tried.load === undefined) !== (power.load === undefined)) continue;
      const after = kind.ports(changed);
      if (after.length !== ports.length || after.some((p, i) => p.id !== ports[i]?.id)) continue;
      const setting = { option, value, power: tried };
      if (keepsPaths(power, tried)) return setting;
      first ??= setting;
    }
  return first;
}

function keepsPaths(before: PowerTreatment, after: PowerTreatment): boolean {
  return (before.paths ?? []).every((path) =>
    after.paths?.some((other) => other.from === path.from && other.to === path.to),
  );
}

function otherValues(schema: unknown, now: unknown): readonly (string | boolean)[] {
  const meta = schema instanceof z.ZodType ? fieldMeta(schema) : undefined;
  if (meta?.control === "switch") return [now !== true];
  return (meta?.choices ?? []).map((c) => c.value).filter((value) => value !== now);
}
