/** Wrong settings: gains, tap values, user bands, the mode of a receiver. */
import { z } from "zod";
import type { Design, Part } from "../../../design/design.ts";
import { quoted } from "../../../design/lookup.ts";
import { isSameValue } from "../../../design/options.ts";
import { moved, withOptions } from "../change.ts";
import type { Fault } from "../fault.ts";
import { makeFault, optionsOf, type Sort } from "./sort.ts";

/** How far off a gain is that somebody turned to try it out [dB]. */
const GAIN_OFF_DB = 25;
/** A tap from the wrong end of the shelf [dB]. */
const TAP_OFF_DB = 12;
/** Most settings of other receivers that one receiver is tried with. */
const MOST_RIVALS = 4;

const bandRows = z.array(z.object({ number: z.number(), centreMHz: z.number() }));

export const settingFaults: Sort = (design) =>
  design.parts.flatMap((part) => [
    ...gains(part),
    ...taps(part),
    ...wrongMode(part),
    ...wrongUserBands(design, part),
  ]);

function gains(part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "gain");
  return ([1, -1] as const).flatMap((sign) => {
    const gainDb = moved(part, key, sign * GAIN_OFF_DB);
    if (gainDb === undefined) return [];
    const type = sign > 0 ? "gain-high" : "gain-low";
    return makeFault(type, {
      key: part.id,
      title: `The gain of ${quoted(part)} is set to ${gainDb} dB.`,
      parts: [part.id],
      apply: (d) => withOptions(d, part.id, { [key]: gainDb }),
    });
  });
}

function taps(part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "tap loss");
  return [TAP_OFF_DB, -TAP_OFF_DB].flatMap((by) => {
    const tapLossDb = moved(part, key, by);
    if (tapLossDb === undefined) return [];
    return makeFault("wrong-tap", {
      key: `${part.id}=${tapLossDb}`,
      title: `${quoted(part)} has a tap value of ${tapLossDb} dB.`,
      parts: [part.id],
      apply: (d) => withOptions(d, part.id, { [key]: tapLossDb }),
    });
  });
}

function wrongMode(part: Part): Fault[] {
  const mode = modeKey(part);
  if (mode === undefined) return [];
  return [
    makeFault("wrong-mode", {
      key: part.id,
      title: `${quoted(part)} is set to universal mode.`,
      parts: [part.id],
      apply: (d) => withOptions(d, part.id, { [mode]: "universal" }),
    }),
  ];
}

/** The option that sets a receiver to single-cable mode, where it is set so. */
function modeKey(part: Part): string | undefined {
  return optionsOf(part, "receiver mode").find((key) => part.options[key] === "single-cable");
}

/** The user bands of another receiver, or a centre that the converter does not have. */
function wrongUserBands(design: Design, part: Part): Fault[] {
  const [key = ""] = optionsOf(part, "receiver user bands");
  if (modeKey(part) === undefined) return [];
  const own = bandRows.safeParse(part.options[key]);
  if (!own.success || own.data.length === 0) return [];
  const rivals = design.parts
    .filter((other) => other.id !== part.id && modeKey(other) !== undefined)
    .map((other) => ({ other, userBands: other.options[optionsOf(other, "receiver user bands")[0] ?? ""] }))
    .filter(({ userBands }) => !isSameValue(userBands, part.options[key]))
    .slice(0, MOST_RIVALS);
  const [first, ...rest] = own.data;
  const shifted = [{ number: first?.number ?? 1, centreMHz: (first?.centreMHz ?? 1210) + 74 }, ...rest];
  return [
    ...rivals.map(({ other, userBands }) =>
      makeFault("wrong-user-band", {
        key: `${part.id}=${other.id}`,
        title: `${quoted(part)} is set to the user bands of ${quoted(other)}.`,
        parts: [part.id, other.id],
        apply: (d) => withOptions(d, part.id, { [key]: userBands }),
      }),
    ),
    makeFault("wrong-user-band", {
      key: `${part.id}=centre`,
      title: `${quoted(part)} has a wrong centre frequency for user band ${first?.number ?? 1}.`,
      parts: [part.id],
      apply: (d) => withOptions(d, part.id, { [key]: shifted }),
    }),
  ];
}
