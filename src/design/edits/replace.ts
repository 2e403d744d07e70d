/** Replacing a part by one of another kind, in its place. */
import { defaultOptions, kindOf } from "../../parts/catalogue.ts";
import type { PartKind } from "../../parts/contract.ts";
import type { Design, Part, PartId } from "../design.ts";
import { partById } from "../lookup.ts";
import { hasDefaultLabel, namer } from "../names.ts";
import { checkOptions, isSameValue } from "../options.ts";
import { withinSizeLimits } from "../sizeLimits.ts";
import { done, type Edit, refuse } from "./edit.ts";
import { matchPorts, refit } from "./refit.ts";

/**
 * Swaps the kind of a part. Id and place stay; so does a label of the user's own. Wires go to ports of the
 * same name, then to ports of the same side and medium in order; each one that finds none is noted.
 *
 * Options that both kinds have are kept where the user has set them and the new kind allows the value. An
 * untouched one takes the new kind's typical value, unless that would cost a wire (fewer outputs).
 */
export function replaceKind(design: Design, id: PartId, newKind: string): Edit {
  const part = partById(design, id);
  const old = part && kindOf(part.kind);
  const kind = kindOf(newKind);
  if (!part || !old) return refuse("That part is no longer in the design.");
  if (!kind) return refuse(`There is no kind of part “${newKind}”.`);
  if (kind === old) return done(design);

  const label = hasDefaultLabel(part, old) ? numbered(design, part, old, kind) : part.label;
  const typical = defaultOptions(old);
  const versions = [
    adopt(kind, part, (key, value) => !isSameValue(value, typical[key])),
    adopt(kind, part, () => true),
  ].map((options) => {
    const replaced: Part = { ...part, kind: newKind, label, options };
    return { replaced, ports: matchPorts(design, part, replaced, "in order") };
  });
  const [chosen, everything] = versions;
  if (!chosen || !everything) return refuse(`“${kind.name}” cannot take the place of “${old.name}”.`);
  const best = everything.ports.size > chosen.ports.size ? everything : chosen;
  return withinSizeLimits(design, refit(design, best.replaced, best.ports));
}

/** "Universal LNB 2" becomes "Wideband LNB 2", or the next number where that is taken. */
function numbered(design: Design, part: Part, old: PartKind, kind: PartKind): string {
  const label = `${kind.name}${part.label.slice(old.name.length)}`;
  const taken = design.parts.some((other) => other.label === label);
  return taken ? namer(design.parts).fresh(kind).label : label;
}

function adopt(kind: PartKind, part: Part, keep: (key: string, value: unknown) => boolean) {
  const kept: Record<string, unknown> = {};
  for (const [key, field] of Object.entries(kind.options.shape)) {
    const value = part.options[key];
    if (value !== undefined && keep(key, value) && field.safeParse(value).success) kept[key] = value;
  }
  const checked = checkOptions(kind, kept);
  return checked.ok ? checked.options : defaultOptions(kind);
}
