/** A place that misses a limit, made by hand: what is missing there is as the test says, whatever arrives. */
import type { Design } from "../../../src/design/design.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import type { Blamed } from "../../../src/findings/blame/culprit.ts";
import { blameForLevel } from "../../../src/findings/blame/level.ts";
import { blameForQuality, type Quality } from "../../../src/findings/blame/quality.ts";
import type { CarrierFigures } from "../../../src/findings/places.ts";
import type { Service } from "../../../src/signal/carrier.ts";
import type { Sketch } from "../../draw.ts";

/** Channel 30 at 546 MHz in 64 QAM 2/3, at so many dBµV. */
export function aerial(levelDbuv: number, more: Record<string, unknown> = {}): Sketch[string] {
  return [
    "aerial-uhf",
    { levelDbuv, channels: [{ channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }], ...more },
  ];
}

/** As a finding quotes a carrier: the first one of source a. */
export function figures(more: Partial<CarrierFigures> = {}): CarrierFigures {
  const [levelDbuv, cniDb, cnDb, ciDb] = [40, 20, 20, Number.POSITIVE_INFINITY];
  return { origin: "a", index: 0, name: "C30", centreMHz: 546, levelDbuv, cniDb, cnDb, ciDb, ...more };
}

type At = { readonly service?: Service; readonly worst?: Partial<CarrierFigures> };

const spot = (output: string) => {
  const [part = "", port] = output.split(".");
  return { part, ...(port === undefined ? {} : { port }) };
};

/** Who is to blame that so much is missing, or too much, at an input or a socket ("set.in"). */
export function blamedForLevel(
  design: Design,
  at: string,
  side: "too little" | "too much",
  missingDb: number,
  { service = "tv", worst }: At = {},
): Blamed | undefined {
  const limit = 50;
  return blameForLevel(evaluate(design), {
    severity: "warning",
    at: { ...spot(at), service, side },
    parts: [spot(at).part],
    wires: [],
    value: side === "too little" ? limit - missingDb : limit + missingDb,
    limit,
    facts: { failing: 1, of: 1, worst: figures(worst) },
  });
}

/** The same of a C/N. */
export function blamedForQuality(
  design: Design,
  at: string,
  missingDb: number,
  { service = "tv", worst }: At = {},
): Quality {
  const limit = 30;
  return blameForQuality(evaluate(design), {
    severity: "warning",
    at: { ...spot(at), service },
    parts: [spot(at).part],
    wires: [],
    value: limit - missingDb,
    limit,
    facts: { failing: 1, of: 1, figure: "C/(N+I)", worst: figures(worst), spoiler: { by: "foreign" } },
  });
}
