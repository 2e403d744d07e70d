/** Faults as tradesmen find them: the first two causes name the part to take in hand. Common practice, no source. */
import { describe, expect, test } from "vitest";
import { TRADE_CASES } from "./cases.ts";
import type { TradeCase } from "./drawings.ts";
import { MORE_CASES } from "./moreCases.ts";
import { namingOf } from "./naming.ts";
import { OTHER_BAND_CASES } from "./otherBandCases.ts";
import { SATELLITE_CASES } from "./satelliteCases.ts";
import { STACKED_CASES } from "./stackedCases.ts";
import { TERRESTRIAL_CASES } from "./terrestrialCases.ts";

const ALL: readonly TradeCase[] = [
  ...TRADE_CASES,
  ...MORE_CASES,
  ...SATELLITE_CASES,
  ...OTHER_BAND_CASES,
  ...TERRESTRIAL_CASES,
  ...STACKED_CASES,
];
const FAULTS = ALL.filter(({ culprits }) => culprits.length > 0);
const SOUND = ALL.filter(({ culprits }) => culprits.length === 0);

describe("one of the first two causes names what is wrong:", () => {
  test.each(FAULTS)("$fault", (fault) => {
    const { named } = namingOf(fault);
    expect(
      named.filter((part) => fault.culprits.includes(part)),
      `named: ${named}`,
    ).not.toEqual([]);
    const { also } = fault;
    if (also)
      expect(
        named.filter((part) => also.includes(part)),
        `named: ${named}`,
      ).not.toEqual([]);
  });
});

describe("nothing is named, for nothing is wrong:", () => {
  test.each(SOUND)("$fault", (sound) => {
    const { causes, failing } = namingOf(sound);
    expect(causes.map(({ root }) => [root.rule, ...root.parts])).toEqual([]);
    expect(failing.map(({ part }) => part)).toEqual([]);
  });
});
