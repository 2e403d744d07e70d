/**
 * How one design became another, small enough to be written down at every edit: what is the same in both is not
 * named. A patch leads forth and back. Whatever it does not touch keeps its identity.
 */
import type { Design, Part, Wire } from "./design.ts";
import { wireId } from "./design.ts";
import { applyList, invertList, type ListPatch, listDifference } from "./listPatch.ts";
import { isSameValue } from "./options.ts";
import type { Settings } from "./settings.ts";
import { activeName } from "./variants.ts";

/** Null: not there. */
type Change<T> = readonly [before: T | null, after: T | null];

export type Patch = {
  readonly title?: Change<string>;
  readonly lesson?: Change<string>;
  readonly settings?: Change<Settings>;
  readonly sheets?: readonly SheetPatch[];
};

/** A variant of the design: the one at work is number 0, those that rest follow. */
export type SheetPatch = {
  /** Its number before and after; null: not there. */
  readonly was: number | null;
  readonly is: number | null;
  /** Null: nobody has named it. */
  readonly name: Change<string>;
  readonly parts?: ListPatch<Part>;
  readonly wires?: ListPatch<Wire>;
};

type Sheet = { readonly name: string | null } & Pick<Design, "parts" | "wires">;

/** Null where both say the same. */
export function patchBetween(before: Design, after: Design): Patch | null {
  if (before === after) return null;
  const sheets = sheetDifference(sheetsOf(before), sheetsOf(after));
  const patch: Patch = {
    ...(before.title === after.title ? {} : { title: [before.title, after.title] }),
    ...(before.lesson === after.lesson ? {} : { lesson: [before.lesson ?? null, after.lesson ?? null] }),
    ...(isSameValue(before.settings, after.settings)
      ? {}
      : { settings: [before.settings ?? null, after.settings ?? null] }),
    ...(sheets.length === 0 ? {} : { sheets }),
  };
  return Object.keys(patch).length === 0 ? null : patch;
}

/** The design after; null where the patch was not made for this one. */
export function applyPatch(patch: Patch, design: Design): Design | null {
  const sheets = applySheets(patch.sheets ?? [], sheetsOf(design));
  const [active, ...resting] = sheets ?? [];
  if (!active || !isFrom(patch.title, design.title) || !isFrom(patch.lesson, design.lesson)) return null;
  const title = patch.title ? patch.title[1] : design.title;
  const lesson = patch.lesson ? patch.lesson[1] : design.lesson;
  const settings = patch.settings ? patch.settings[1] : design.settings;
  const variants = resting.map((sheet) => (hasName(sheet) ? sheet : { ...sheet, name: "" }));
  const isKept = isSameList(variants, design.variants ?? []);
  return {
    title: title ?? "",
    ...(lesson === null || lesson === undefined ? {} : { lesson }),
    ...(settings === null || settings === undefined ? {} : { settings }),
    parts: active.parts,
    wires: active.wires,
    ...(active.name === null ? {} : { variant: active.name }),
    ...(variants.length === 0 ? {} : { variants: isKept ? (design.variants ?? []) : variants }),
  };
}

/** The way back. */
export function invertPatch({ title, lesson, settings, sheets }: Patch): Patch {
  return {
    ...(title && { title: swapped(title) }),
    ...(lesson && { lesson: swapped(lesson) }),
    ...(settings && { settings: swapped(settings) }),
    ...(sheets && {
      sheets: sheets.map(({ was, is, name, parts, wires }) => ({
        was: is,
        is: was,
        name: swapped(name),
        ...(parts && { parts: invertList(parts) }),
        ...(wires && { wires: invertList(wires) }),
      })),
    }),
  };
}

function isFrom(change: Change<string> | undefined, value: string | undefined): boolean {
  return change === undefined || change[0] === (value ?? null);
}

function swapped<T>([before, after]: Change<T>): Change<T> {
  return [after, before];
}

function sheetsOf(design: Design): readonly Sheet[] {
  const { parts, wires, variant = null, variants = [] } = design;
  return [{ name: variant, parts, wires }, ...variants];
}

const NO_SHEET: Sheet = { name: null, parts: [], wires: [] };
const partKey = (part: Part) => part.id;

function sheetDifference(before: readonly Sheet[], after: readonly Sheet[]): readonly SheetPatch[] {
  const patches: SheetPatch[] = [];
  const left = new Map(before.entries());
  for (const [is, sheet] of after.entries()) {
    const was = formerOf(sheet, left);
    const former = before[was ?? -1] ?? NO_SHEET;
    if (was !== null) left.delete(was);
    const patch = sheetPatch(was, is, former, sheet);
    if (was !== is || former.name !== sheet.name || patch.parts || patch.wires) patches.push(patch);
  }
  for (const [was, sheet] of left) patches.push(sheetPatch(was, null, sheet, NO_SHEET));
  return patches;
}

/** The sheet of the same name, or the one that only got another name. */
function formerOf(sheet: Sheet, left: ReadonlyMap<number, Sheet>): number | null {
  const list = [...left];
  const found =
    list.find(([, each]) => nameOf(each) === nameOf(sheet)) ??
    list.find(([, each]) => each.parts === sheet.parts && each.wires === sheet.wires);
  return found ? found[0] : null;
}

function sheetPatch(was: number | null, is: number | null, before: Sheet, after: Sheet): SheetPatch {
  const parts = listDifference(before.parts, after.parts, partKey);
  const wires = listDifference(before.wires, after.wires, wireId);
  return {
    was,
    is,
    name: [before.name, after.name],
    ...(parts && { parts }),
    ...(wires && { wires }),
  };
}

function applySheets(patches: readonly SheetPatch[], before: readonly Sheet[]): readonly Sheet[] | null {
  const touched = new Set(patches.map(({ was }) => was));
  const after = new Map([...before.entries()].filter(([i]) => !touched.has(i)));
  for (const { was, is, name, parts, wires } of patches) {
    const sheet = was === null ? NO_SHEET : before[was];
    if (!sheet || sheet.name !== name[0]) return null;
    const newParts = parts ? applyList(parts, sheet.parts, partKey) : sheet.parts;
    const newWires = wires ? applyList(wires, sheet.wires, wireId) : sheet.wires;
    if (!newParts || !newWires || !holdTogether(newParts, newWires)) return null;
    if (is === null) continue;
    if (after.has(is)) return null;
    after.set(is, { name: name[1], parts: newParts, wires: newWires });
  }
  const sheets = Array.from({ length: after.size }, (_, i) => after.get(i));
  const found = sheets.filter((sheet) => sheet !== undefined);
  return found.length === after.size ? found : null;
}

/** A wire to a part that is not there would be a design that nobody has checked. */
function holdTogether(parts: readonly Part[], wires: readonly Wire[]): boolean {
  const ids = new Set(parts.map(partKey));
  return wires.every(({ from, to }) => ids.has(from[0]) && ids.has(to[0]));
}

function nameOf({ name }: Sheet): string {
  return name ?? activeName({});
}

function hasName(sheet: Sheet): sheet is Sheet & { readonly name: string } {
  return sheet.name !== null;
}

function isSameList<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((each, i) => each === b[i]);
}
