/** Ids and labels for new parts: "lnb3" and "Quattro LNB 3". */
import type { PartKind } from "../parts/contract.ts";
import type { Part } from "./design.ts";
import { LIMITS } from "./limits.ts";

export type Names = { readonly id: string; readonly label: string };

export type Namer = {
  /** Names for a new part of this kind. */
  readonly fresh: (kind: PartKind) => Names;
  /** Names for a copy: a label of the user's own goes on counting ("Bedroom", "Bedroom 2"). */
  readonly copyOf: (part: Part, kind: PartKind) => Names;
};

/** Hands out names that none of the parts has, and remembers those it gave. */
export function namer(parts: readonly Part[]): Namer {
  const ids = new Set(parts.map((part) => part.id));
  const labels = new Set(parts.map((part) => part.label));
  const highest = new Map<string, number>();
  for (const id of ids) count(highest, /^(.*?)(\d{1,6})$/.exec(id));

  function fresh(kind: PartKind): Names {
    let n = highest.get(kind.prefix) ?? 0;
    do n += 1;
    while (ids.has(`${kind.prefix}${n}`) || labels.has(`${kind.name} ${n}`));
    return take({ id: `${kind.prefix}${n}`, label: `${kind.name} ${n}` }, kind.prefix, n);
  }

  function take(names: Names, prefix: string, n: number): Names {
    ids.add(names.id);
    labels.add(names.label);
    highest.set(prefix, n);
    return names;
  }

  function copyOf(part: Part, kind: PartKind): Names {
    if (hasDefaultLabel(part, kind)) return fresh(kind);
    const { id } = fresh(kind);
    const { stem, number } = numberedName(part.label);
    let label = part.label;
    for (let n = number + 1; labels.has(label) && label !== ""; n += 1) {
      label = `${stem.slice(0, LIMITS.labelLength - 8)} ${n}`;
    }
    labels.add(label);
    return { id, label };
  }

  return { fresh, copyOf };
}

/** "Bedroom 2" is the second "Bedroom", "Bedroom" the first. */
function numberedName(label: string): { readonly stem: string; readonly number: number } {
  const [, stem = label, digits = "1"] = /^(.+) (\d{1,6})$/s.exec(label) ?? [];
  return { stem, number: Number(digits) };
}

/**
 * Parts in the order in which copies of them are named, so that these go on counting as the originals count: by number,
 * and where that is the same as one reads, from top to bottom and from left to right.
 */
export function inNamingOrder(parts: readonly Part[]): readonly Part[] {
  const numbers = new Map(parts.map((part) => [part, numberedName(part.label).number] as const));
  const number = (part: Part) => numbers.get(part) ?? 1;
  return [...parts].sort((a, b) => number(a) - number(b) || a.at[1] - b.at[1] || a.at[0] - b.at[0]);
}

/** True while the user has not named the part: "Quattro LNB 3". */
export function hasDefaultLabel(part: Part, kind: PartKind): boolean {
  return part.label.startsWith(`${kind.name} `) && /^\d+$/.test(part.label.slice(kind.name.length + 1));
}

function count(highest: Map<string, number>, match: RegExpExecArray | null): void {
  const [, prefix, digits] = match ?? [];
  if (prefix === undefined || digits === undefined) return;
  highest.set(prefix, Math.max(highest.get(prefix) ?? 0, Number(digits)));
}
