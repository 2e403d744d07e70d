/** Changing one option of a part. */
import { kindOf } from "../../parts/catalogue.ts";
import type { Design, PartId } from "../design.ts";
import { faultWords } from "../faultWords.ts";
import { partById } from "../lookup.ts";
import { checkOptions, isSameValue } from "../options.ts";
import { withinSizeLimits } from "../sizeLimits.ts";
import { done, type Edit, refuse } from "./edit.ts";
import { matchPorts, refit } from "./refit.ts";

/**
 * Sets an option after checking it against the kind's schema; `undefined` goes back to the typical value.
 * Where fewer ports are left (a splitter with fewer ways), the wires of the vanished ones are taken off,
 * with a note each.
 */
export function setOption(design: Design, id: PartId, key: string, value: unknown): Edit {
  const part = partById(design, id);
  const kind = part && kindOf(part.kind);
  if (!part || !kind) return refuse("That part is no longer in the design.");
  if (!Object.hasOwn(kind.options.shape, key)) return refuse(`“${kind.name}” has no option “${key}”.`);
  const checked = checkOptions(kind, { ...part.options, [key]: value });
  if (!checked.ok) return refuse(faultWords(checked.fault));
  if (isSameValue(checked.options, part.options)) return done(design);
  const changed = { ...part, options: checked.options };
  return withinSizeLimits(design, refit(design, changed, matchPorts(design, part, changed, "falls away")));
}
