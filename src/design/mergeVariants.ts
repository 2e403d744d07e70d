/** Three-way merge of the variants of a design, by their names. */
import type { Design, DesignContent, Variant } from "./design.ts";
import { LIMITS } from "./limits.ts";
import { mergeContent } from "./mergeContent.ts";
import { keptList, mergeOrder, mergeValue, type NoteClash } from "./mergeValues.ts";
import { isSameValue } from "./options.ts";
import { activeName } from "./variants.ts";

type Merged = DesignContent & Pick<Design, "variant" | "variants">;

/** One variant on the three sides, under whatever name each has it; absent where a side does not have it. */
type Entry = { readonly base?: Variant; readonly ours?: Variant; readonly theirs?: Variant };

/**
 * Undefined when nothing is left, as each side dropped what the other kept. The variant at work is ours, unless
 * we have changed nothing at all: nobody's drawing is taken from under his hands.
 */
export function mergeVariants(
  base: Design,
  ours: Design,
  theirs: Design,
  note: NoteClash,
): Merged | undefined {
  const entries = paired(all(base), all(ours), all(theirs));
  const merged = new Map(
    [...entries].flatMap(([key, entry]) => {
      const variant = mergeEntry(entry, note);
      return variant ? [[key, variant] as const] : [];
    }),
  );
  const named = withOwnNames(entries, merged);
  const keyOf = (side: keyof Entry, name: string) =>
    [...entries].find(([, entry]) => entry[side]?.name === name)?.[0] ?? "";
  const actives = [keyOf("ours", activeName(ours)), keyOf("theirs", activeName(theirs))];
  if (isSameValue(base, ours)) actives.reverse();
  const active = [...actives, ...named.keys()].find((key) => named.has(key));
  const chosen = active === undefined ? undefined : named.get(active);
  if (!chosen) return undefined;

  const resting = (side: keyof Entry, design: Design) =>
    (design.variants ?? []).map((variant) => keyOf(side, variant.name));
  const order = mergeOrder(
    resting("base", base),
    resting("ours", ours),
    resting("theirs", theirs),
    (key) => named.has(key) && key !== active,
  );
  const rest = [...named.keys()].filter((key) => key !== active && !order.includes(key));
  const variants = keptList(
    ours.variants ?? [],
    [...order, ...rest].flatMap((key) => named.get(key) ?? []),
  );
  const { name, parts, wires } = chosen;
  const variant = nameOf(name, base, ours, theirs);
  return {
    parts,
    wires,
    ...(variant === undefined ? {} : { variant }),
    ...(variants.length === 0 ? {} : { variants }),
  };
}

/** The variant at work first; entries that rest are the design's own objects. */
function all(design: Design): readonly Variant[] {
  const { parts, wires, variants = [] } = design;
  return [{ name: activeName(design), parts, wires }, ...variants];
}

/** A name stays absent while nobody has given one. */
function nameOf(name: string, base: Design, ours: Design, theirs: Design): string | undefined {
  const wished = base.variant === ours.variant ? [theirs, ours] : [ours, theirs];
  const design = wished.find((side) => activeName(side) === name);
  return design ? design.variant : name;
}

function paired(
  base: readonly Variant[],
  ours: readonly Variant[],
  theirs: readonly Variant[],
): ReadonlyMap<string, Entry> {
  const ourNames = renames(base, ours);
  const theirNames = renames(base, theirs);
  const entries = new Map<string, Entry>();
  for (const before of base) {
    const left = ourNames.get(before.name);
    const right = theirNames.get(before.name);
    entries.set(`base ${before.name}`, {
      base: before,
      ...(left === undefined ? {} : { ours: left }),
      ...(right === undefined ? {} : { theirs: right }),
    });
  }
  const isNew = (names: ReadonlyMap<string, Variant>) => {
    const old = new Set(names.values());
    return (variant: Variant) => !old.has(variant);
  };
  const theirNew = theirs.filter(isNew(theirNames));
  for (const variant of theirNew) entries.set(`new ${variant.name}`, { theirs: variant });
  for (const variant of ours.filter(isNew(ourNames))) {
    const twin = theirNew.find((other) => isSameValue(other, variant));
    if (twin) entries.set(`new ${twin.name}`, { ours: variant, theirs: twin });
    else entries.set(`ours ${variant.name}`, { ours: variant });
  }
  return entries;
}

/** What each variant of `base` has become: the one of its name, else a new one with most of its parts. */
function renames(base: readonly Variant[], side: readonly Variant[]): ReadonlyMap<string, Variant> {
  const former = new Set(base.map((variant) => variant.name));
  const byName = new Map(side.map((variant) => [variant.name, variant]));
  const free = side.filter((variant) => !former.has(variant.name));
  const found = new Map<string, Variant>();
  for (const before of base) {
    const same = byName.get(before.name) ?? free.find((variant) => isMostlySame(before, variant));
    if (!same) continue;
    found.set(before.name, same);
    if (free.includes(same)) free.splice(free.indexOf(same), 1);
  }
  return found;
}

function isMostlySame(before: Variant, after: Variant): boolean {
  const ids = new Set(before.parts.map((part) => part.id));
  const shared = after.parts.filter((part) => ids.has(part.id)).length;
  return shared * 2 > Math.max(ids.size, after.parts.length) || ids.size + after.parts.length === 0;
}

function mergeEntry({ base, ours, theirs }: Entry, note: NoteClash): Variant | undefined {
  if (ours && theirs) {
    const before = base ?? theirs;
    const name = mergeValue(before.name, ours.name, theirs.name, () => note(null, "variant"));
    const { parts, wires } = mergeContent(before, ours, theirs, note);
    const isOurs = name === ours.name && parts === ours.parts && wires === ours.wires;
    return isOurs ? ours : { name, parts, wires };
  }
  const survivor = ours ?? theirs;
  if (!survivor || !base) return survivor;
  if (isSameValue(base, survivor)) return undefined;
  note(null, "variant");
  return survivor;
}

/** Every variant under a name of its own: where two would have the same, theirs keeps it. */
function withOwnNames(
  entries: ReadonlyMap<string, Entry>,
  merged: ReadonlyMap<string, Variant>,
): ReadonlyMap<string, Variant> {
  const taken = new Set<string>();
  const named = new Map(merged);
  const keepsName = (key: string) => entries.get(key)?.theirs?.name === merged.get(key)?.name;
  const first = [...merged.keys()].filter(keepsName);
  for (const key of [...first, ...[...merged.keys()].filter((other) => !keepsName(other))]) {
    const variant = merged.get(key);
    if (!variant) continue;
    const name = freeName(variant.name, taken);
    taken.add(name);
    if (name !== variant.name) named.set(key, { ...variant, name });
  }
  return named;
}

function freeName(name: string, taken: ReadonlySet<string>): string {
  let free = name;
  for (let n = 2; taken.has(free); n += 1) free = `${name.slice(0, LIMITS.variantNameLength - 4)} ${n}`;
  return free;
}
