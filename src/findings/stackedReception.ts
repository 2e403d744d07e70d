/** Reception through user bands: any carrier that the converter holds, on a band that is one's own. */
import { stackedLevelDbuv, stackedNoiseRatio } from "../evaluate/stacking.ts";
import type { ReceiverInput } from "../parts/contract.ts";
import { MOST_USER_BANDS } from "../parts/userBands.ts";
import type { Band, Stack, StackStandard } from "../signal/band.ts";
import type { Offer } from "../signal/control.ts";
import { disturbanceUv2 } from "../signal/readout.ts";
import {
  addResult,
  type CarrierResult,
  type CarrierResults,
  carrierKey,
  cutResult,
  type LostCarrier,
} from "./carrierResult.ts";
import { notSelectable, shiftedOnUserBand, type TunedInput } from "./feedSuits.ts";
import type { MissingReason } from "./missing.ts";
import { graded, tunerNoiseUv2, unblocked } from "./tunerQuality.ts";

/** Further apart than this a receiver and its converter do not mean the same user band [MHz]; our choice. */
export const SAME_CENTRE_MHZ = 2;

/** Adds what becomes of the carriers that a stacked feed can bring to one input. */
export function addStackedResults(
  tuned: TunedInput,
  band: Band,
  stack: Stack,
  headroomDb: number,
  results: CarrierResults,
): void {
  const lines = usableUserBands(tuned, band, stack);
  for (const held of stack.holds)
    for (let i = 0; i < held.level.length; i++) {
      const key = carrierKey(held.origin.key, held.grid.index[i] ?? 0);
      for (const line of lines)
        addResult(
          results,
          key,
          cutResult(held, i) ??
            unset(held) ??
            astray(held, stack) ??
            shifted(tuned.input, stack, held, i) ??
            resultOn(line, tuned.input, headroomDb, { band, stack, held, i }),
        );
    }
}

/** A switched LNB before the unit stays as the unit's own supply leaves it: no message gets past the unit. */
function unset({ conditions }: Band): LostCarrier | undefined {
  const other = conditions.find(({ at, setting }) => at.setting !== setting);
  return other && notSelectable({ kind: "no command", part: other.at.part }, other.at.part);
}

/** Asked for by another oscillator it is not what comes. */
function shifted(input: ReceiverInput, stack: Stack, held: Band, i: number): LostCarrier | undefined {
  const reason = shiftedOnUserBand(input, held, held.grid.plan[held.grid.index[i] ?? 0]?.airMHz ?? 0, stack);
  return reason && { got: false, why: "wrong feed", reason };
}

/** Who asks for the plane that belongs at an input is given what is there. */
function astray(held: Band, { strays, part }: Stack): LostCarrier | undefined {
  if (!strays.has(held)) return undefined;
  return { got: false, why: "wrong feed", reason: { kind: "leads changed", part }, culprit: { part } };
}

/** Positions of the user bands this input may use in the band's arrays, or why it cannot use one. */
function usableUserBands(tuned: TunedInput, band: Band, stack: Stack): readonly (number | LostCarrier)[] {
  const { input } = tuned;
  if (input.feed !== "stacked" || !input.userBands)
    return [mistuned({ kind: "single-cable feed on a plain input" })];
  if (input.userBands.length === 0) return [mistuned({ kind: "no user band set" })];
  const { part } = stack;
  const isHeard = stack.control.offers.some(
    (o) =>
      o.part === tuned.receiver &&
      o.port === input.port &&
      o.toneArrives &&
      o.request?.userBands !== undefined,
  );
  if (!isHeard) return [notSelectable({ kind: "no message", part }, part)];
  return input.userBands.map(({ number, centreMHz }): number | LostCarrier => {
    const at = stack.numbers.indexOf(number);
    if (at < 0) return mistuned({ kind: "no such user band", part, userBand: number });
    const knows = stack.standards[at] ?? stack.standard;
    if (input.standard && !understands(knows, input.standard, number))
      return mistuned({ kind: "other messages", part, userBand: number, sends: input.standard, knows });
    const thereMHz = band.grid.plan[band.grid.index[at] ?? 0]?.airMHz ?? 0;
    if (Math.abs(thereMHz - centreMHz) > SAME_CENTRE_MHZ)
      return mistuned({ kind: "other centre", part, userBand: number, hereMHz: centreMHz, thereMHz });
    const cut = cutResult(band, at);
    return (cut && { ...cut, userBand: number }) ?? occupied(tuned, number, stack) ?? at;
  });
}

/** SCR messages have three bits for the number of a user band, so they reach the first eight. */
function understands(knows: StackStandard, sends: StackStandard, userBand: number): boolean {
  const both = knows === "both" ? sends : knows;
  if (both === "both") return true;
  if (sends !== "both" && sends !== both) return false;
  return both !== "EN 50494" || userBand <= MOST_USER_BANDS["EN 50494"];
}

function mistuned(reason: MissingReason): LostCarrier {
  const userBand = "userBand" in reason ? { userBand: reason.userBand } : {};
  return { got: false, why: "wrong feed", reason, ...userBand };
}

/** Who else keeps a user band from being tuned in peace. */
function occupied(
  { receiver, input, alone }: TunedInput,
  userBand: number,
  stack: Stack,
): LostCarrier | undefined {
  const standing = standingSupply(stack.control);
  if (standing) {
    const { part, volts } = standing;
    return notSelectable({ kind: "line held", by: part, volts }, part);
  }
  if (alone) return undefined;
  const others = stack.control.offers.filter((o) => !(o.part === receiver && o.port === input.port));
  const holder = others.find((o) => o.request && !o.request.userBands);
  if (holder) return notSelectable({ kind: "line held", by: holder.part }, holder.part);
  const own = stack.control.offers.find((o) => o.part === receiver && o.port === input.port);
  const isTwiceHere = (own?.request?.userBands ?? []).filter((n) => n === userBand).length > 1;
  const rival = others.find((o) => o.request?.userBands?.includes(userBand))?.part;
  const by = rival ?? (isTwiceHere ? receiver : undefined);
  if (by === undefined) return undefined;
  return { ...notSelectable({ kind: "user band used twice", by, userBand }, by), userBand };
}

/**
 * A supply without commands that keeps the line above the threshold: messages begin by raising it from 13 to 18 V, which
 * nobody notices then (EN 50494, as quoted: a standing 18 V blocks the bus).
 */
export function standingSupply({ offers, thresholdVolts }: Stack["control"]): Offer | undefined {
  return offers.find((o) => o.kind === "plain" && !o.dormant && o.volts > thresholdVolts);
}

/** A carrier held by a stacking converter, and the feed that its user bands travel on. */
export type Held = {
  readonly band: Band;
  readonly stack: Stack;
  /** The band at the converter's input, and the carrier's place in it. */
  readonly held: Band;
  readonly i: number;
};

/** Quality of a held carrier on the user band at `line`, behind what the line from the converter adds. */
function resultOn(
  line: number | LostCarrier,
  { port, frontEnd }: ReceiverInput,
  headroomDb: number,
  of: Held,
): CarrierResult {
  if (typeof line !== "number") return line;
  const { band, stack, held, i } = of;
  const { levelDbuv, noise, interference } = ownPowers(of, line);
  const result = graded({
    port,
    origin: held.origin.key,
    index: held.grid.index[i] ?? 0,
    userBand: stack.numbers[line] ?? 0,
    levelDbuv,
    noise: noise + tunerNoiseUv2(band.grid, line, frontEnd.noiseFigureDb),
    interference,
    requiredDb: held.grid.required[i] ?? 0,
  });
  return unblocked(result, { service: held.origin.service, port }, headroomDb, () => undefined);
}

/**
 * Level [dBµV], noise and interference [(µV)², linear] of one held carrier on a user band.
 * The user band carries those of the worst carrier held; this one brings its own instead.
 */
export function ownPowers({ band, stack, held, i }: Held, line: number) {
  const worst = 10 ** ((band.level[line] ?? 0) / 10);
  const leaving = stackedLevelDbuv(stack.stage, held.level[i] ?? 0);
  const levelDbuv = (band.level[line] ?? 0) + leaving - stack.entryLevelDbuv;
  const power = 10 ** (levelDbuv / 10);
  const heldPower = 10 ** ((held.level[i] ?? 0) / 10);
  const lineNoise = Math.max(0, (band.noise[line] ?? 0) - worst * stack.entryNoiseRatio);
  const foreign = Math.max(0, disturbanceUv2(band, line) - worst * stack.entryInterferenceRatio);
  return {
    levelDbuv,
    noise: lineNoise + power * stackedNoiseRatio(stack.stage, held, i),
    interference: foreign + (power * disturbanceUv2(held, i)) / heldPower,
  };
}
