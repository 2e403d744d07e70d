/** Arbitrary edits of a design, made by the edits that the app itself uses: what a person could do in a window. */
import fc from "fast-check";
import type { Design, PartId } from "../../src/design/design.ts";
import { wireId } from "../../src/design/design.ts";
import type { Edit } from "../../src/design/edits/edit.ts";
import { insertIntoWire } from "../../src/design/edits/insert.ts";
import { planJoin } from "../../src/design/edits/join.ts";
import { setOption } from "../../src/design/edits/options.ts";
import { addPart, moveParts, newPart, rename, retitle } from "../../src/design/edits/parts.ts";
import { removeParts } from "../../src/design/edits/remove.ts";
import { replaceKind } from "../../src/design/edits/replace.ts";
import { setSettings } from "../../src/design/edits/settings.ts";
import { addVariant, removeVariant, renameVariant, switchVariant } from "../../src/design/edits/variants.ts";
import { portsOf } from "../../src/design/lookup.ts";
import { variantNames } from "../../src/design/variants.ts";
import { CATALOGUE, kindOf } from "../../src/parts/catalogue.ts";
import { anyOptions } from "../arbitraries.ts";

const ON_PART = ["option", "rename", "move"] as const;
const ON_DESIGN = [
  ...ON_PART,
  "replace",
  "remove part",
  "remove wire",
  "join",
  "add",
  "insert",
  "title",
  "setting",
  "add variant",
  "switch variant",
  "rename variant",
  "remove variant",
] as const;

export type Wish = { readonly what: (typeof ON_DESIGN)[number]; readonly a: number; readonly b: number };

const wish = (what: readonly Wish["what"][]): fc.Arbitrary<Wish> =>
  fc.record({ what: fc.constantFrom(...what), a: fc.nat(1000), b: fc.nat(1000) });

export const anyWishes: fc.Arbitrary<readonly Wish[]> = fc.array(wish(ON_DESIGN), { maxLength: 8 });
export const anyPartWishes: fc.Arbitrary<readonly Wish[]> = fc.array(wish(ON_PART), { maxLength: 8 });

/** The design after all edits that could be done; a refused one is passed over. */
export function afterWishes(start: Design, wishes: readonly Wish[], among?: readonly PartId[]): Design {
  return wishes.reduce((design, each) => {
    const edit = editOf(design, each, among);
    return edit?.ok ? edit.design : design;
  }, start);
}

/** `among`: the parts that may be chosen; all by default. */
export function editOf(design: Design, { what, a, b }: Wish, among?: readonly PartId[]): Edit | undefined {
  const { wires } = design;
  const parts = among ? design.parts.filter((part) => among.includes(part.id)) : design.parts;
  const part = pick(parts, a);
  const names = variantNames(design);
  switch (what) {
    case "title":
      return retitle(design, `Title ${b % 5}`);
    case "setting":
      return a % 2 === 0
        ? setSettings(design, "limits", pick(["en60728", "rd346", "practice", "own"], b))
        : setSettings(design, "derating", pick(["usual", "beats", "power"], b));
    case "add variant":
      return addVariant(design, `Plan ${b % 4}`);
    case "switch variant":
      return switchVariant(design, pick(names, b) ?? "");
    case "rename variant":
      return renameVariant(design, pick(names, a) ?? "", `Name ${b % 4}`);
    case "remove variant":
      return removeVariant(design, pick(names, a) ?? "");
    case "add": {
      const kind = pick(CATALOGUE, a);
      const made = kind && newPart(design, kind.kind, [b * 8, a * 8]);
      return made && addPart(design, made);
    }
    case "remove wire": {
      const wire = pick(wires, b);
      return wire && removeParts(design, new Set(), new Set([wireId(wire)]));
    }
    case "insert": {
      const wire = pick(wires, b);
      const made = newPart(design, "attenuator", [0, 0]);
      return wire && made && insertIntoWire(design, made, wireId(wire));
    }
  }
  if (!part) return undefined;
  const kind = kindOf(part.kind);
  switch (what) {
    case "option": {
      const key = kind && pick(Object.keys(kind.options.shape), b);
      if (!kind || key === undefined) return undefined;
      const [options] = fc.sample(anyOptions(kind), { numRuns: 1, seed: b });
      return setOption(design, part.id, key, options?.[key]);
    }
    case "rename":
      return rename(design, part.id, `Name ${b % 3}`);
    case "move":
      return moveParts(design, new Map([[part.id, [b % 7, b % 5]]]));
    case "replace": {
      const other = pick(CATALOGUE, b);
      return other && replaceKind(design, part.id, other.kind);
    }
    case "remove part":
      return removeParts(design, new Set([part.id]), new Set());
    case "join": {
      const other = pick(parts, b);
      const from = pick(portsOf(part), b);
      const to = other && pick(portsOf(other), a);
      return other && from && to && planJoin(design, [part.id, from.id], [other.id, to.id]);
    }
  }
}

function pick<T>(list: readonly T[], n: number): T | undefined {
  return list[n % Math.max(1, list.length)];
}
