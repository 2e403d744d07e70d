/**
 * Three-way merge of designs: what two windows made of the same design becomes one, value by value. Where both
 * changed the same value differently it is a clash: theirs, which lies in the storage already, stands in the
 * result, and the caller decides whether both go on as designs of their own.
 */
import type { Design } from "./design.ts";
import { LIMITS } from "./limits.ts";
import { type MergeClash, mergeValue, type NoteClash } from "./mergeValues.ts";
import { mergeVariants } from "./mergeVariants.ts";
import { isSameValue } from "./options.ts";
import { type Settings, settingsOf } from "./settings.ts";
import { heldCount } from "./variants.ts";

export type Merge = { readonly design: Design; readonly clashes: readonly MergeClash[] };

/** The result is as good as what comes from a file; what is unchanged in it are the objects of `ours`. */
export function mergeDesigns(base: Design, ours: Design, theirs: Design): Merge {
  const clashes = new Map<string, MergeClash>();
  const note: NoteClash = (part, what) => clashes.set(`${what} ${part}`, { part, what });
  const variants = mergeVariants(base, ours, theirs, note);
  if (!variants) return { design: theirs, clashes: [{ part: null, what: "variant" }] };

  const title = mergeValue(base.title, ours.title, theirs.title, () => note(null, "title"));
  const lesson = mergeValue(base.lesson, ours.lesson, theirs.lesson, () => note(null, "lesson"));
  const settings = mergeSettings(base, ours, theirs, note);
  const design: Design = {
    title,
    ...(lesson === undefined ? {} : { lesson }),
    ...(settings === undefined ? {} : { settings }),
    ...variants,
  };
  // Two additions that fit each by itself may be too much together.
  if (isTooLarge(design))
    return { design: theirs, clashes: [...clashes.values(), { part: null, what: "size" }] };
  return { design: isIdentical(design, ours) ? ours : design, clashes: [...clashes.values()] };
}

function mergeSettings(base: Design, ours: Design, theirs: Design, note: NoteClash): Settings | undefined {
  if (isSameValue(ours.settings, theirs.settings) || isSameValue(base.settings, theirs.settings))
    return ours.settings;
  if (isSameValue(base.settings, ours.settings)) return theirs.settings;
  const [before, left, right] = [settingsOf(base), settingsOf(ours), settingsOf(theirs)];
  const field = <K extends keyof Settings>(key: K): Settings[K] =>
    mergeValue(before[key], left[key], right[key], () => note(null, key));
  return {
    limits: field("limits"),
    ownLimits: field("ownLimits"),
    ownName: field("ownName"),
    ownSource: field("ownSource"),
    ownIsolation: field("ownIsolation"),
    ownReserveDb: field("ownReserveDb"),
    keepDb: field("keepDb"),
    judgeRain: field("judgeRain"),
    rainPercent: field("rainPercent"),
    rainOf: field("rainOf"),
    judgeLift: field("judgeLift"),
    liftRiseDb: field("liftRiseDb"),
    liftFadeDb: field("liftFadeDb"),
    judgeMasts: field("judgeMasts"),
    judgeReceivers: field("judgeReceivers"),
    derating: field("derating"),
    cascade: field("cascade"),
    mastBand: field("mastBand"),
    mastFieldFrom: field("mastFieldFrom"),
    mastDistanceM: field("mastDistanceM"),
    mastEirpDbm: field("mastEirpDbm"),
    mastDbuvPerM: field("mastDbuvPerM"),
    cordlessDistanceM: field("cordlessDistanceM"),
  };
}

function isTooLarge(design: Design): boolean {
  const { parts, wires } = heldCount(design);
  const variants = design.variants?.length ?? 0;
  return parts > LIMITS.parts || wires > LIMITS.wires || variants > LIMITS.variants;
}

/** Whether all values are the very same objects. */
function isIdentical(a: Design, b: Design): boolean {
  const values = (design: Design) => new Map<string, unknown>(Object.entries(design));
  const [left, right] = [values(a), values(b)];
  return left.size === right.size && [...left].every(([key, value]) => right.get(key) === value);
}
