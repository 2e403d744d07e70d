/**
 * Which feed suits which input, and who can set a switch. Oscillators of 9750 and 10600 MHz, 13/18 V with a threshold
 * near 15 V and 22 kHz for the high half: EN 61319-1, from memory.
 */
import { describe, expect, test } from "vitest";
import { type TunedInput, whyUnusable } from "../../src/findings/feedSuits.ts";
import type { ReceiverInput } from "../../src/parts/contract.ts";
import type { Band } from "../../src/signal/band.ts";
import type { Polarisation, SkyHalf } from "../../src/signal/carrier.ts";
import type { Offer } from "../../src/signal/control.ts";
import { bandOf, gridOf, switchAt } from "../signal/bands.ts";
import { speaker } from "./byHand.ts";

function sky(o: {
  readonly polarisation?: Polarisation;
  readonly half?: SkyHalf;
  readonly loMHz?: number;
  readonly conditions?: Band["conditions"];
}): Band {
  const { polarisation = "V", half, loMHz, conditions } = o;
  const band = bandOf({ service: "satellite", grid: gridOf([1550], 30) });
  return {
    ...band,
    origin: { ...band.origin, polarisation },
    ...(half ? { half } : {}),
    shifts: loMHz === undefined ? [] : [loMHz],
    conditions: conditions ?? [],
  };
}

function input(feed: ReceiverInput["feed"], polarisation?: Polarisation): ReceiverInput {
  const range = { tunesFromMHz: 290, tunesToMHz: 2350 };
  return {
    port: "sat",
    feed,
    services: ["satellite"],
    ...range,
    tuners: 1,
    frontEnd: { noiseFigureDb: 8, overloadDbuv: 100, tuner: "silicon" },
    ...(polarisation ? { polarisation } : {}),
  };
}

function tuned(feed: ReceiverInput["feed"], more: Partial<TunedInput> = {}): TunedInput {
  return { receiver: "rx", input: input(feed), alone: false, ...more };
}

const reasonOf = (t: TunedInput, band: Band) => whyUnusable(t, band)?.reason.kind;

describe("a feed", () => {
  test("that was never converted is of no use", () => {
    for (const feed of ["switched", "wideband", "stacked"] as const)
      expect(reasonOf(tuned(feed), sky({}))).toBe("not converted");
  });

  test("of a universal LNB suits a switched input, with either oscillator", () => {
    expect(whyUnusable(tuned("switched"), sky({ half: "low", loMHz: 9750 }))).toBeUndefined();
    expect(whyUnusable(tuned("switched"), sky({ half: "high", loMHz: 10_600 }))).toBeUndefined();
  });

  // Real oscillators are off by a megahertz or so; 5 MHz are still no other plan.
  test("may have an oscillator that is a little off, and not one of another plan", () => {
    expect(reasonOf(tuned("switched"), sky({ half: "low", loMHz: 9755 }))).toBeUndefined();
    expect(reasonOf(tuned("switched"), sky({ half: "low", loMHz: 9745 }))).toBeUndefined();
    expect(reasonOf(tuned("switched"), sky({ half: "low", loMHz: 9756 }))).toBe("other oscillator");
    expect(reasonOf(tuned("switched"), sky({ half: "high", loMHz: 9750 }))).toBe("other oscillator");
    expect(reasonOf(tuned("switched"), sky({ loMHz: 10_410 }))).toBe("wideband feed on a switched input");
  });

  // 11 000 MHz less 10 000 MHz is 1000 MHz; whoever reckons with 9750 MHz looks at 1250 MHz, 250 MHz above.
  test("is told with the oscillator of the menu and the real one", () => {
    expect(whyUnusable(tuned("switched"), sky({ half: "low", loMHz: 10_000 }))).toMatchObject({
      why: "wrong feed",
      reason: { kind: "other oscillator", menuMHz: 9750, realMHz: 10_000 },
    });
  });

  test("suits a menu that has its oscillator, half by half", () => {
    const menu = { lowMHz: 10_000, highMHz: 10_600 };
    const at = (half: SkyHalf, loMHz: number) =>
      reasonOf(tuned("switched", { input: { ...input("switched"), menu } }), sky({ half, loMHz }));
    expect(at("low", 10_000)).toBeUndefined();
    expect(at("high", 10_600)).toBeUndefined();
    expect(at("low", 9750)).toBe("other oscillator");
  });

  test("of a wideband LNB suits the menu that has its oscillator, or finds it out", () => {
    const at = (widebandMHz: number | undefined, loMHz: number) => {
      const menu = { lowMHz: 9750, highMHz: 10_600, ...(widebandMHz ? { widebandMHz } : {}) };
      return reasonOf(tuned("wideband", { input: { ...input("wideband"), menu } }), sky({ loMHz }));
    };
    expect(at(10_410, 10_410)).toBeUndefined();
    expect(at(undefined, 10_200)).toBeUndefined();
    expect(at(10_400, 10_410)).toBe("other oscillator");
  });

  test("of a wideband LNB suits a wideband input, and no other does", () => {
    expect(whyUnusable(tuned("wideband"), sky({ loMHz: 10_410 }))).toBeUndefined();
    expect(reasonOf(tuned("wideband"), sky({ half: "low", loMHz: 9750 }))).toBe(
      "switched feed on a wideband input",
    );
  });

  test("of the other polarisation does not suit an input that is meant for one", () => {
    const vertical = tuned("wideband", { input: input("wideband", "V") });
    expect(whyUnusable(vertical, sky({ loMHz: 10_410 }))).toBeUndefined();
    expect(whyUnusable(vertical, sky({ loMHz: 10_410, polarisation: "H" }))).toEqual({
      got: false,
      why: "wrong feed",
      reason: { kind: "wrong polarisation at the input", port: "sat", input: "V", arrives: "H" },
    });
  });

  test("without user bands does not suit a single-cable input", () => {
    expect(reasonOf(tuned("stacked"), sky({ half: "low", loMHz: 9750 }))).toBe(
      "plain feed on a single-cable input",
    );
  });

  test("of an aerial is asked nothing", () => {
    expect(whyUnusable(tuned("switched"), bandOf())).toBeUndefined();
  });
});

/** A quadrant behind a multiswitch that stands at `now` and is spoken to by these. */
function behind(setting: string, offers: readonly Offer[], now: string | null = null): Band {
  const quadrant = setting.slice(-2);
  const high = quadrant.endsWith("H");
  return sky({
    polarisation: quadrant.startsWith("H") ? "H" : "V",
    half: high ? "high" : "low",
    loMHz: high ? 10_600 : 9750,
    conditions: [{ at: switchAt("ms", now, offers), setting }],
  });
}

const result = (band: Band, more: Partial<TunedInput> = {}) => whyUnusable(tuned("switched", more), band);

describe("a switch on the way", () => {
  const rx = speaker("rx");

  test("is set by whoever speaks to it alone, to any quadrant", () => {
    for (const quadrant of ["VL", "VH", "HL", "HH"]) expect(result(behind(quadrant, [rx]))).toBeUndefined();
  });

  test("that nobody speaks to gives what it stands at, and nothing else", () => {
    expect(result(behind("VL", [], "VL"))).toBeUndefined();
    expect(result(behind("HL", [], "VL"))).toEqual({
      got: false,
      why: "not selectable",
      reason: { kind: "no command", part: "ms" },
      culprit: { part: "ms" },
    });
  });

  test("takes no orders from a mains unit, nor from another input for this one", () => {
    const mains = speaker("psu", { kind: "plain" });
    expect(result(behind("HL", [mains], "VL"))).toMatchObject({ reason: { kind: "no command" } });
    const other = speaker("rx", { port: "sat2" });
    expect(result(behind("HL", [other], "VL"))).toMatchObject({
      reason: { kind: "set by another", by: "rx" },
    });
  });

  test("that another speaks to as well gives what it stands at, unless one is alone", () => {
    const both = [speaker("rx2"), rx];
    expect(result(behind("VL", both, "VL"))).toBeUndefined();
    expect(result(behind("HL", both, "VL"))).toEqual({
      got: false,
      why: "not selectable",
      reason: { kind: "set by another", part: "ms", by: "rx2" },
      culprit: { part: "ms" },
    });
    expect(result(behind("HL", both, "VL"), { alone: true })).toBeUndefined();
  });

  test("is free while the other's way leads through a switch that stands elsewhere", () => {
    expect(result(behind("HL", [speaker("rx2", { dormant: true }), rx], "VL"))).toBeUndefined();
  });

  test("understands 18 V only above its threshold, and needs them for horizontal alone", () => {
    const weak = speaker("rx", { volts18: 15 });
    expect(result(behind("HL", [weak]))).toMatchObject({
      reason: { kind: "too few volts", part: "ms", volts: 15, thresholdVolts: 15 },
      culprit: { part: "ms" },
    });
    expect(result(behind("VL", [weak]))).toBeUndefined();
    expect(result(behind("HL", [speaker("rx", { volts18: 15.1 })]))).toBeUndefined();
  });

  test("does not serve where the next one on the way cannot be set", () => {
    const ms = { at: switchAt("ms", null, [rx]), setting: "VL" };
    const positions = { at: switchAt("positions", "1", []), setting: "2" };
    for (const conditions of [
      [ms, positions],
      [positions, ms],
    ])
      expect(result(sky({ half: "low", loMHz: 9750, conditions }))).toMatchObject({
        reason: { kind: "no command", part: "positions" },
      });
  });

  test("needs the tone for the high half, and for any dish but the first", () => {
    const mute = speaker("rx", { toneArrives: false });
    const noTone = {
      why: "not selectable",
      reason: { kind: "no tone", part: "ms" },
      culprit: { part: "ms" },
    };
    expect(result(behind("VL", [mute]))).toBeUndefined();
    expect(result(behind("VH", [mute]))).toMatchObject(noTone);
    expect(result(behind("1:VL", [mute]))).toBeUndefined();
    expect(result(behind("2:VL", [mute]))).toMatchObject(noTone);
    expect(result(behind("2:VL", [rx]))).toBeUndefined();
  });
});

describe("leads that are changed at the switch", () => {
  test("bring a quadrant under another's name: whoever asks for it finds something else", () => {
    const at = switchAt("ms", null, [speaker("rx")]);
    const swapped = sky({ half: "low", loMHz: 9750, conditions: [{ at, setting: "HL" }] });
    expect(result(swapped)).toEqual({
      got: false,
      why: "wrong feed",
      reason: { kind: "leads changed", part: "ms" },
      culprit: { part: "ms" },
    });
    const inPlace = sky({ half: "low", loMHz: 9750, conditions: [{ at, setting: "VL" }] });
    expect(result(inPlace)).toBeUndefined();
  });

  test("are not suspected of a feed that holds both halves", () => {
    const both = sky({ loMHz: 10_410, conditions: [{ at: switchAt("ms", "VL", []), setting: "VL" }] });
    expect(whyUnusable(tuned("wideband"), both)).toBeUndefined();
  });

  // A position switch has no quadrants of its own: "2" names a dish.
  test("are not suspected of a position switch", () => {
    const at = switchAt("positions", null, [speaker("rx")]);
    expect(result(sky({ half: "low", loMHz: 9750, conditions: [{ at, setting: "2" }] }))).toBeUndefined();
  });
});
