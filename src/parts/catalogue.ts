/** Every kind of part there is, in the order of the tray. */
import { AMPLIFIERS } from "./amplifiers.ts";
import { CABLES } from "./cable.ts";
import { COMBINERS } from "./combiners.ts";
import type { AnyOptions, Family, PartKind } from "./contract.ts";
import { LNBS } from "./convertLnb.ts";
import { STACKERS } from "./convertStack.ts";
import { DISH_MOTORS } from "./dishMotor.ts";
import { FILTERS } from "./filters.ts";
import { METERS } from "./meter.ts";
import { MULTISWITCHES } from "./multiswitch.ts";
import { OUTLETS } from "./outlets.ts";
import { POSITION_SWITCHES } from "./positionSwitch.ts";
import { RECEIVE } from "./receive.ts";
import { RECEIVERS } from "./receivers.ts";
import { SPLITTERS } from "./splitters.ts";
import { TRIMMERS } from "./trim.ts";
import { TRUNK_AMPLIFIERS } from "./trunkAmplifier.ts";

export const CATALOGUE: readonly PartKind[] = [
  ...RECEIVE,
  ...LNBS,
  ...STACKERS,
  ...MULTISWITCHES,
  ...POSITION_SWITCHES,
  ...DISH_MOTORS,
  ...SPLITTERS,
  ...COMBINERS,
  ...FILTERS,
  ...AMPLIFIERS,
  ...TRUNK_AMPLIFIERS,
  ...TRIMMERS,
  ...CABLES,
  ...OUTLETS,
  ...RECEIVERS,
  ...METERS,
];

// A map, so that a key like "__proto__" from a hostile file finds nothing.
const byKey: ReadonlyMap<string, PartKind> = new Map(CATALOGUE.map((kind) => [kind.kind, kind]));

/** The kind with this key; undefined for a key the catalogue doesn't have. */
export function kindOf(key: string): PartKind | undefined {
  return byKey.get(key);
}

export function kindsOf(family: Family): readonly PartKind[] {
  return CATALOGUE.filter((kind) => kind.family === family);
}

/** Options of a new part of this kind: every field at its typical value. */
export function defaultOptions(kind: PartKind): AnyOptions {
  return kind.options.parse({});
}
