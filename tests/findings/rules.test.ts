/**
 * Every rule where it must speak and where it must stay silent. The situations are trade facts
 * (common practice, no source) unless a source stands beside what is to be said.
 */

import { describe, expect, test } from "vitest";
import { readDesign, writeDesign } from "../../src/design/file.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { DESIGN_RULES, RULES } from "../../src/findings/rules/index.ts";
import { RULE_EXAMPLES, type RuleExample } from "../../src/sentences/explain/examples.ts";
import { messagesOf } from "../messages.ts";

/** Words that a message of each rule must hold where it speaks. */
const SAYS: Readonly<Record<string, RegExp>> = {
  loop: /“Attenuator 1” lies on a loop/,
  // The satellite stands at 31.6° (20° East from 50° N 10° E, by the orbit's geometry).
  "blocked-view": /obstacle reaches up to 45°, and the satellite has an elevation of 32°\. It takes \d/,
  "supply-overloaded": /“Faulty joint” shorts the supply of “Satellite receiver”/,
  "no-supply":
    /13 V from “Satellite receiver” stop at “DC block”: it passes no DC, so “Universal LNB” is dead/,
  // 19 V is where the window for horizontal ends: EN 61319-1, from memory.
  "over-voltage": /“Quattro LNB” gets 24 V from “Power inserter” and is made for 19 V at most/,
  // Both polarisations of 40 transponders lie at the same frequencies with like levels: nothing survives C/I 0 dB.
  "shared-frequencies": /share .* MHz behind “Combiner”\. \d+ satellite transponders are lost/,
  "wideband-shared": /“Wideband LNB” is a wideband LNB: its feed lies over terrestrial TV/,
  "band-cut": /“Outlet, TV and satellite” passes only \d+ of 40/,
  "switched-output-shared": /“Satellite receiver 1” and “Satellite receiver 2” share/,
  // 6 carriers of 80 dBµV and 35 dB of gain make 115 dBµV each; 100 − 7.5·log10(5) = 94.8 dBµV are allowed.
  overload: /115 dBµV for each of 6 carriers, 20\.2 dB over/,
  "wrong-quadrant": /Inputs VL and HL are swapped at “Multiswitch”/,
  // 120 m at 130 Ω/km are 15.6 Ω: with 280 mA that is 4.4 V.
  "command-lost": /cannot select horizontal .*: it gets 13\.6 V and needs 16 V, since “Cable” takes 4\.4 V/,
  "user-band-conflict":
    /User band 1 .* tuner 1 of “SCR\/dSCR receiver 1” and tuner 1 of “SCR\/dSCR receiver 2”/,
  "motor-line": /“Satellite receiver” sends no motor commands, so “Dish motor” never turns the dish/,
  "wrong-feed": /wideband feed/,
  "too-many-tuners": /3 tuners but is set to 2 user bands/,
  "plane-missing": /40 of 80 .* horizontal/,
  "receiver-misses": /“Filter” stops 3 DAB blocks: .* gets none of 3 DAB blocks/,
  // 73 dBµV less 100 m of 1.0 mm copper (about 20 dB at 950 MHz, 31 dB at 2150 MHz): below the 60 dBµV of the window.
  "stacking-input":
    /the input [VH] of “SCR\/dSCR multiswitch”, \d+ of 40 satellite transponders are too weak/,
  // EN 60728-1 as quoted: DVB-T 74 dBµV at most; the aerial is said to give 90, the plate takes 1 dB.
  "level-limits": /too strong\. The worst has 89 dBµV .* 74 dBµV at most/,
  // ITU-R BT.1368, from memory: the next channel may be 30 dB stronger; C34 is set to be 33 dB above C33.
  "tuner-blocked": /C34 is 33 dB above C33, and 30 dB block it/,
  // DVB-T 64 QAM: 26 dB by EN 60728-1, from memory. 30 dBµV less 3.6 dBµV of thermal noise and 5 dB are 21 dB.
  "low-carrier-to-noise": /too little C\/N; the worst has 25\.\d+ dB/,
  // Three times 37.5 dB in step: 37.5 − 20·log10(3) = 28 dB; Royal Decree 346/2011 4.5 asks for 30 dB.
  intermodulation:
    /Products of 3 amplifiers .* products\. The worst lie only 2[78]\.\d dB below; 30 dB are asked for/,
  // 12 dB within UHF: EN 60728-1, from memory.
  "level-difference": /C25 is 20 dB stronger than C30; 12 dB/,
  // 200 m of 1.0 mm copper: 19.6 dB/100 m at 950 MHz, 30.7 at 2150 MHz (skin effect): over 20 dB apart.
  slope: /falls by 2\d.* dB from/,
  "open-end": /“Tap” ends open/,
  "above-band-edge": /C55/,
  // Two legs of 1 dB and 22 dB of decoupling are 24 dB; RD 346/2011 asks for 38 dB up to 300 MHz.
  // c·0.82/(4·3 m) = 20.486 MHz, the 25th time 512.1 MHz; C26 is centred on 514 MHz.
  "dead-stub": /dead cable of 3 m on “T joint” takes up to .* dB from C26, with a notch at 512\.1 MHz/,
  "dwelling-isolation":
    /“Outlet, TV 1” \(flat 1\) and “Outlet, TV 2” \(flat 2\) .* 24 dB at 88\.3 MHz; 38 dB/,
  "same-signal-twice": /two ways/,
  // Four quadrants times four times four times four are 256 settings, one of which is the present one.
  "many-alternatives": /offer 255 settings behind “Position switch 3” beside the present one; only 64/,
  "not-connected": /1 end is still open: the aerial input of “TV set”/,
};

/** The same for the further examples of a rule, by their titles. */
const SAYS_MORE: Readonly<Record<string, RegExp>> = {
  // One wire, one voltage: whoever feeds the cable decides for both (common practice, no source).
  "A second receiver on the loop-out of one that is on":
    /“Satellite receiver 1” feeds the cable itself while it is on, so “Satellite receiver 2” gets only the quadrant/,
  // DiSEqC: a switch goes where a command sends it, and to its first input without one (common practice, no source).
  "Two satellites and a receiver that sends no position": /“Position switch” stays at position 1 of 2/,
  // 10 000 MHz in the menu, 9750 MHz in the LNB: f − 9750 lies 250 MHz above f − 10 000.
  "A menu with the oscillator of another LNB":
    /says 10.000 MHz, and the LNB has 9750 MHz\. So all appears 250 MHz above where the receiver looks/,
  // 13 V and no tone: vertical low for good, 20 of the 80 transponders (EN 61319-1 control).
  "A receiver that gives 13 V without tone, whatever it is tuned to":
    /gives a fixed voltage and no tone: “Satellite receiver” gets 20 of 80/,
};

function said(rule: string, example: RuleExample) {
  return report(evaluate(example.load())).findings.filter((f) => f.rule === rule);
}

describe("a rule speaks where it must", () => {
  test.each(RULE_EXAMPLES)("$rule: $speaks.title", ({ rule, speaks }) => {
    const messages = messagesOf(evaluate(speaks.load()), rule);
    expect(messages.join(" ")).toMatch(SAYS[rule] ?? "no words given");
    for (const message of messages) {
      expect(message).not.toMatch(/[⟦⟧]|undefined|NaN/);
      expect(message).toMatch(/\.$/);
    }
  });
});

const MORE = RULE_EXAMPLES.flatMap(({ rule, more }) => more.map((example) => ({ rule, example })));

test.each(MORE)("$rule speaks as well: $example.title", ({ rule, example }) => {
  expect(messagesOf(evaluate(example.load()), rule).join(" ")).toMatch(
    SAYS_MORE[example.title] ?? "no words given",
  );
});

describe("a rule stays silent where it must", () => {
  test.each(RULE_EXAMPLES)("$rule: $silent.title", ({ rule, silent }) => {
    expect(said(rule, silent)).toEqual([]);
  });
});

test("every rule has its examples and words, and nothing else has", () => {
  const rules = [...RULES, ...DESIGN_RULES].map((r) => r.id).sort();
  expect(RULE_EXAMPLES.map((e) => e.rule).sort()).toEqual(rules);
  expect(Object.keys(SAYS).sort()).toEqual(rules);
  expect(Object.keys(SAYS_MORE).sort()).toEqual(MORE.map(({ example }) => example.title).sort());
});

test.each(RULE_EXAMPLES)("the examples of $rule are documents that can be written and read", (examples) => {
  for (const example of [examples.speaks, examples.silent, ...examples.more]) {
    const design = example.load();
    const places = design.parts.map((p) => p.at.join());
    expect(new Set(places).size).toBe(places.length);
    const reading = readDesign(writeDesign(design));
    expect(reading).toMatchObject({ ok: true, design });
  }
});
