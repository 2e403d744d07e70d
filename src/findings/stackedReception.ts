/** Reception through user bands: any carrier that the converter holds, on a band that is one's own. */

import { type Clause, partName } from "../sentences/phrases.ts";
import type { Band, Stack } from "../signal/band.ts";
import { carrierKey, cutFate, type Fate, type Fates, type Lost, note } from "./fate.ts";
import { barred, type Listener, outOfReach } from "./reach.ts";
import { graded, tunerNoiseUv2 } from "./tunerQuality.ts";

/** Further apart than this a receiver and its converter do not mean the same user band [MHz]; our choice. */
export const SAME_CENTRE_MHZ = 2;

/** What becomes of the carriers that a stacked feed can bring to one input. */
export function listenStacked(listener: Listener, band: Band, stack: Stack, fates: Fates): void {
  const lines = usableUserBands(listener, band, stack);
  for (const held of stack.holds)
    for (let i = 0; i < held.level.length; i++) {
      const key = carrierKey(held.origin.key, held.grid.index[i] ?? 0);
      for (const line of lines)
        note(fates, key, cutFate(held, i) ?? fateOn(line, listener.input.port, { band, stack, held, i }));
    }
}

/** Positions of the user bands this input may use in the band's arrays, or why it has none. */
function usableUserBands(listener: Listener, band: Band, stack: Stack): readonly (number | Lost)[] {
  const { input } = listener;
  if (input.feed !== "stacked" || !input.userBands)
    return [
      mistuned({
        one: (n) => `${n} is on a user band, which this input cannot ask for`,
        other: (n) => `${n} are on user bands, which this input cannot ask for`,
      }),
    ];
  const heard = stack.control.offers.some(
    (o) =>
      o.part === listener.receiver &&
      o.port === input.port &&
      o.toneArrives &&
      o.request?.userBands !== undefined,
  );
  if (!heard) return [barred(stack.part, outOfReach(`no message gets to ${partName(stack.part)}`))];
  return input.userBands.map(({ number, centreMHz }): number | Lost => {
    const at = stack.numbers.indexOf(number);
    if (at < 0) return mistuned(outOfReachOn(number, `which ${partName(stack.part)} does not have`));
    const setMHz = band.grid.plan[band.grid.index[at] ?? 0]?.airMHz ?? 0;
    if (Math.abs(setMHz - centreMHz) > SAME_CENTRE_MHZ)
      return mistuned(outOfReachOn(number, `set to another centre than at ${partName(stack.part)}`));
    return cutFate(band, at) ?? occupied(listener, number, stack) ?? at;
  });
}

function mistuned(clause: Clause): Lost {
  return { got: false, why: "wrong feed", clause };
}

function outOfReachOn(userBand: number, why: string): Clause {
  return {
    one: (n) => `${n} is out of reach on user band ${userBand}, ${why}`,
    other: (n) => `${n} are out of reach on user band ${userBand}, ${why}`,
  };
}

/** Who else keeps a user band from being tuned in peace. */
function occupied({ receiver, input, alone }: Listener, userBand: number, stack: Stack): Lost | undefined {
  if (alone) return undefined;
  const others = stack.control.offers.filter(
    (o) => o.kind === "commands" && !(o.part === receiver && o.port === input.port),
  );
  const holder = others.find((o) => o.request && !o.request.userBands);
  if (holder) return barred(holder.part, outOfReach(`${partName(holder.part)} holds the line`));
  const rival = others.find((o) => o.request?.userBands?.includes(userBand));
  if (!rival) return undefined;
  const by = `retuned by ${partName(rival.part)}, which uses the same user band`;
  return barred(rival.part, { one: (n) => `${n} is ${by}`, other: (n) => `${n} are ${by}` });
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
function fateOn(line: number | Lost, port: string, of: Held): Fate {
  if (typeof line !== "number") return line;
  const { band, stack, held, i } = of;
  const { noise, interference } = ownPowers(of, line);
  return graded({
    port,
    origin: held.origin.key,
    index: held.grid.index[i] ?? 0,
    userBand: stack.numbers[line] ?? 0,
    levelDbuv: band.level[line] ?? 0,
    noise: noise + tunerNoiseUv2(band.grid, line),
    interference,
    requiredDb: held.grid.required[i] ?? 0,
  });
}

/**
 * Noise and interference of one held carrier on a user band [(µV)², linear].
 * The user band carries those of the worst carrier held; this one brings its own instead.
 */
export function ownPowers({ band, stack, held, i }: Held, line: number) {
  const power = 10 ** ((band.level[line] ?? 0) / 10);
  const heldPower = 10 ** ((held.level[i] ?? 0) / 10);
  const lineNoise = Math.max(0, (band.noise[line] ?? 0) - power * stack.entryNoiseRatio);
  const foreign = Math.max(0, (band.interference[line] ?? 0) - power * stack.entryInterferenceRatio);
  return {
    noise: lineNoise + (power * (held.noise[i] ?? 0)) / heldPower,
    interference: foreign + (power * (held.interference[i] ?? 0)) / heldPower,
  };
}
