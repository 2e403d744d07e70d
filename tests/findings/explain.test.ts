/** EX: every finding explains itself to the customer, to the trade and to whoever measures. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Design, wireId } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Evaluation } from "../../src/evaluate/evaluation.ts";
import type { Finding } from "../../src/findings/finding.ts";
import { report } from "../../src/findings/report.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { roughly } from "../../src/sentences/explain/plainWords.ts";
import { ruleBook } from "../../src/sentences/explain/ruleBook.ts";
import { type Explained, explainFinding } from "../../src/sentences/finding.ts";
import { wordsOf } from "../../src/sentences/rules/index.ts";
import { anyDesign } from "../arbitraries.ts";
import { variedExample } from "./varied.ts";

/** Words of the trade that a customer need not know. */
const JARGON = [
  /dB|MHz|GHz|kHz|C\/N|C\/I|\bMER\b|Ω|\bIF\b|LNB|SCR|DiSEqC|DVB|\bmA\b|\d V\b/,
  /quadrant|polaris|transponder|multiplex|multiswitch|diplex|splitter|tuner|carrier|attenuat|equalis|slope/i,
  /level|impedance|user band|wideband|universal|converter|\btap\b|riser|trunk|isolation|rejection/i,
  /interference|frequenc|modulation/i,
];

/** Words in quotation marks are labels, the user's own. */
const withoutLabels = (text: string) => text.replace(/“[^”]*”/g, "it");

function checked(finding: Finding, evaluation: Evaluation): Explained {
  const explained = explainFinding(finding, evaluation);
  if (!explained) throw new Error(`${finding.rule} does not explain itself`);
  for (const voice of ["customer", "trade", "measure"] as const) {
    const words = withoutLabels(explained[voice]);
    expect(words, finding.rule).toMatch(/^[A-Zi0-9].*\.$/s);
    expect(words, finding.rule).not.toMatch(
      /[⟦⟧]|undefined|null|NaN|Infinity|\[object|\s{2}| [,.;:]|\(\)|: \./,
    );
  }
  const sentences = withoutLabels(explained.customer).split(/(?<=[.!?])\s/);
  expect(sentences.length, "two short sentences at most").toBeLessThanOrEqual(2);
  for (const words of JARGON) expect(withoutLabels(explained.customer)).not.toMatch(words);
  expect(explained.trade.length).toBeGreaterThan(150);
  expect(wordsOf(finding.rule).severities).toContain(finding.severity);
  checkPicture(explained, evaluation);
  return explained;
}

function checkPicture({ picture }: Explained, { design, record }: Evaluation): void {
  if (!picture) return;
  expect(picture.fromMHz).toBeGreaterThanOrEqual(0);
  expect(picture.toMHz).toBeGreaterThan(picture.fromMHz);
  expect(record(picture.at[0])?.ports.some((p) => p.id === picture.at[1] && p.side === "out")).toBe(true);
  const wire = design.wires.find((w) => w.from[0] === picture.at[0] && w.from[1] === picture.at[1]);
  expect(picture.wire).toBe(wire ? wireId(wire) : null);
  for (const mark of picture.marks) {
    expect(mark.fromMHz).toBeLessThan(mark.toMHz);
    expect(mark.fromMHz).toBeGreaterThanOrEqual(picture.fromMHz);
    expect(mark.toMHz).toBeLessThanOrEqual(picture.toMHz);
    expect(mark.label).not.toMatch(/[⟦⟧]|undefined|NaN/);
  }
}

function explainedAll(design: Design): readonly Explained[] {
  const evaluation = evaluate(design);
  return report(evaluation).findings.map((f) => checked(f, evaluation));
}

describe("explanations", () => {
  test.each(RULE_EXAMPLES)("EX1: $rule explains itself in every voice", ({ rule, speaks }) => {
    const own = explainedAll(speaks.load()).filter((e) => e.rule === rule);
    expect(own.length).toBeGreaterThan(0);
  });

  test.each(EXAMPLES)("EX2: all findings of the example $key explain themselves", ({ load }) => {
    for (const { neighbours } of explainedAll(load())) expect(neighbours.length).toBeGreaterThan(0);
  });

  test("EX3: so do the findings of any design, however odd", () => {
    fc.assert(
      fc.property(anyDesign({ maxParts: 14, loops: true }), (odd) => {
        // Labels may hold anything; what is looked for here are the words around them.
        explainedAll({ ...odd, parts: odd.parts.map((part) => ({ ...part, label: part.id })) });
      }),
      { numRuns: 60 },
    );
  });

  test("EX3b: and those of whole installations with some parts set to anything", () => {
    fc.assert(
      fc.property(variedExample(), (varied) => void explainedAll(varied)),
      { numRuns: 60 },
    );
  });

  test("EX4: the trade voice quotes the value and the limit of its finding", () => {
    for (const { rule, speaks } of RULE_EXAMPLES) {
      const evaluation = evaluate(speaks.load());
      for (const f of report(evaluation).findings.filter((each) => each.rule === rule)) {
        const { trade } = checked(f, evaluation);
        if (f.value === undefined || f.limit === undefined) continue;
        expect(trade, rule).toContain(String(Math.round(f.value * 10) / 10));
        if (f.limit !== 0) expect(trade, rule).toContain(String(Math.round(f.limit * 10) / 10));
      }
    }
  });

  test("EX5: a picture marks what is lost: the 17 of 40 transponders outside 950 to 2150 MHz", () => {
    // Wideband LNB, LO 10.4 GHz: IF = RF − LO (range of the plate: planning values, from memory).
    const example = RULE_EXAMPLES.find((e) => e.rule === "band-cut")?.speaks.load();
    const [explained] = explainedAll(example ?? { title: "", parts: [], wires: [] }).filter(
      (e) => e.rule === "band-cut",
    );
    const marks = explained?.picture?.marks ?? [];
    expect(marks.map((m) => m.kind)).toEqual(["lost", "lost"]);
    expect(marks[0]?.fromMHz).toBeGreaterThan(300);
    expect(marks[0]?.toMHz).toBeLessThan(950 + 40);
    expect(marks[1]?.fromMHz).toBeGreaterThan(2150 - 40);
    expect(explained?.picture?.wire).toBe("plate.sat>rx.v");
  });

  test("EX6: only what concerns no frequencies has no picture", () => {
    const without = RULE_EXAMPLES.filter(({ rule, speaks }) =>
      explainedAll(speaks.load()).some((e) => e.rule === rule && e.picture === null),
    );
    expect(without.map((e) => e.rule).sort()).toEqual([
      // Which way a dish looks, and what stands there.
      "blocked-view",
      "loop",
      "many-alternatives",
      "not-connected",
      "over-voltage",
      "supply-overloaded",
    ]);
  });

  test("EX7: where a block keeps the supply away, it is named, and the meter goes to both its sides", () => {
    // Common practice, no source: a DC block passes no supply, so the converter above it is dead.
    const example = RULE_EXAMPLES.find((e) => e.rule === "no-supply")?.speaks.load();
    const [explained] = explainedAll(example ?? { title: "", parts: [], wires: [] }).filter(
      (e) => e.rule === "no-supply",
    );
    expect(explained?.trade).toMatch(/no further up than “DC block”/);
    expect(explained?.measure).toMatch(/both sides of “DC block”/);
  });

  test.each([
    { name: "nothing", n: 0, of: 40, words: "none of the satellite channels" },
    { name: "a quarter", n: 20, of: 80, words: "about a quarter of the satellite channels" },
    { name: "half", n: 40, of: 80, words: "about half of the satellite channels" },
    { name: "all but one", n: 79, of: 80, words: "nearly all of the satellite channels" },
    { name: "all", n: 80, of: 80, words: "all of the satellite channels" },
  ])("EX8: a share is put into words: $name", ({ n, of, words }) => {
    expect(roughly(n, of, { service: "satellite" })).toBe(words);
  });
});

describe("the rule book", () => {
  test("EX9: holds every rule with a reason, a source, its examples, and links that lead somewhere", () => {
    const book = ruleBook();
    expect(new Set(book.map((entry) => entry.id)).size).toBe(book.length);
    for (const entry of book) {
      expect(entry.explain).toMatch(/\.$/);
      expect(entry.source).not.toBe("");
      expect(entry.speaks?.load().parts.length, entry.id).toBeGreaterThan(0);
      expect(entry.silent?.load().parts.length, entry.id).toBeGreaterThan(0);
      const links = [...entry.neighbours, ...entry.namedBy].map((link) => link.id);
      expect(entry.neighbours.length, entry.id).toBe(wordsOf(entry.id).neighbours.length);
      expect(new Set(links).size, entry.id).toBe(links.length);
      expect(links).not.toContain(entry.id);
    }
  });

  test("EX10: severities are listed worst first", () => {
    const weight = { error: 0, warning: 1, note: 2 };
    for (const { severities } of ruleBook()) {
      expect(severities.length).toBeGreaterThan(0);
      expect([...severities].sort((a, b) => weight[a] - weight[b])).toEqual(severities);
    }
  });
});
