/** Changing what a design is reckoned and judged by. */
import type { Design } from "../design.ts";
import { faultWords } from "../faultWords.ts";
import { fieldFault } from "../optionFault.ts";
import { isSameValue } from "../options.ts";
import { SETTINGS, type Settings, settingsOf, USUAL_SETTINGS } from "../settings.ts";
import { done, type Edit, refuse } from "./edit.ts";

/**
 * Sets one of the design's settings after checking it; `undefined` goes back to the usual value.
 * A design with nothing but usual settings names none, so that its file and its link stay short.
 */
export function setSettings(design: Design, key: string, value: unknown): Edit {
  if (!Object.hasOwn(SETTINGS.shape, key)) return refuse(`A design has no setting “${key}”.`);
  return changeSettings(design, { [key]: value });
}

/** Limits of one's own, all at once, by which the design is judged from then on. */
export function setOwnProfile(
  design: Design,
  values: Readonly<Partial<Record<keyof Settings, unknown>>>,
): Edit {
  return changeSettings(design, { ...values, limits: "own" });
}

function changeSettings(design: Design, changed: Readonly<Partial<Record<string, unknown>>>): Edit {
  const before = settingsOf(design);
  const checked = SETTINGS.safeParse({ ...before, ...changed });
  if (!checked.success) {
    const [issue] = checked.error.issues;
    const key = String(issue?.path[0]);
    const field = Object.entries(SETTINGS.shape).find(([name]) => name === key)?.[1];
    const within = issue && { ...issue, path: issue.path.slice(1) };
    return refuse(faultWords(fieldFault({ field, key, value: changed[key], issue: within, place: {} })));
  }
  const settings = checked.data;
  const crossed = settings.ownLimits.findIndex((limit) => limit.minDbuv > limit.maxDbuv);
  if (crossed >= 0 && "ownLimits" in changed)
    return refuse(`Row ${crossed + 1}: the lowest level is above the highest.`);
  const turned = settings.ownIsolation.findIndex(({ fromMHz, toMHz }) => fromMHz >= toMHz);
  if (turned >= 0 && "ownIsolation" in changed)
    return refuse(`Row ${turned + 1}: the range must end above its beginning.`);
  if (isSameValue(settings, before)) return done(design);
  return done(withSettings(design, settings));
}

function withSettings({ settings: _, ...rest }: Design, settings: Settings): Design {
  return isSameValue(settings, USUAL_SETTINGS) ? rest : { ...rest, settings };
}
