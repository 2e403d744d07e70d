/**
 * KT: nothing below the sentences reads a text. With every name, label, summary and help replaced by its key, and
 * every label of a part by its id, the report, its order, the cures, the faults and what they do are the same.
 */
import { expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Report } from "../../src/findings/finding.ts";
import { report } from "../../src/findings/report.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import { CATALOGUE } from "../../src/parts/catalogue.ts";
import { fieldMeta } from "../../src/parts/fields.ts";
import { diagnose } from "../../src/remedies/faults/diagnose.ts";
import { faults } from "../../src/remedies/faults/list.ts";
import { isNoticed, whatFails } from "../../src/remedies/faults/whatFails.ts";
import { search } from "../../src/remedies/search.ts";
import { signature } from "../../src/remedies/signature.ts";
import { SERVICE_NAMES } from "../../src/signal/carrier.ts";
import { TRADE_CASES } from "../trade/cases.ts";

/** Replaces every text of the catalogue by a key of its own, for good: this file is a process of its own. */
function replaceTexts(): number {
  let replaced = 0;
  const put = (target: object, key: string, text: unknown) => {
    Object.defineProperty(target, key, { value: text, enumerable: true, configurable: true, writable: true });
    replaced++;
  };
  for (const kind of CATALOGUE) {
    put(kind, "name", `name of ${kind.kind}`);
    put(kind, "summary", `summary of ${kind.kind}`);
    put(kind, "keywords", []);
    put(kind, "caption", () => `caption of ${kind.kind}`);
    const { ports } = kind;
    const keyed = new WeakMap<object, ReturnType<typeof ports>>();
    put(kind, "ports", (options: Parameters<typeof ports>[0]) => {
      const known = keyed.get(options);
      if (known) return known;
      const made = ports(options).map((port) => ({ ...port, label: `label of ${port.id}` }));
      keyed.set(options, made);
      return made;
    });
    for (const [key, schema] of Object.entries(kind.options.shape)) {
      const meta = fieldMeta(schema);
      if (!meta) continue;
      put(meta, "label", `label of ${key}`);
      put(meta, "help", `help of ${key}`);
      put(meta, "source", `source of ${key}`);
      for (const choice of meta.choices ?? []) put(choice, "label", `label of ${choice.value}`);
    }
  }
  for (const key of Object.keys(SERVICE_NAMES)) put(SERVICE_NAMES, key, `service ${key}`);
  return replaced;
}

/** The design as a fresh object, its labels as they are or as keys. */
function fresh(design: Design, labels: "as drawn" | "keys"): Design {
  const parts = design.parts.map((part) => ({
    ...part,
    options: { ...part.options },
    label: labels === "keys" ? `label of ${part.id}` : part.label,
  }));
  return { ...design, title: labels === "keys" ? "title" : design.title, parts };
}

/** What is found, in order: identities, gravity, places, figures; and who gets what. */
function bare({ causes, findings, verdicts }: Report) {
  return {
    causes: causes.map((c) => [c.id, c.findings.map((f) => f.id), c.receivers, c.outlets]),
    findings: findings.map((f) => [f.id, f.severity, f.parts, f.wires, f.value, f.limit]),
    verdicts: verdicts.map((v) => [
      v.part,
      v.state,
      v.services.map((s) => [s.service, s.wanted, s.got, s.missing.map((m) => [m.why, m.count])]),
    ]),
  };
}

function cures(design: Design) {
  let last: readonly unknown[] = [];
  for (const { proposals } of search(design, { prices: PLACEHOLDER_PRICES, maxTrials: 25 }))
    last = proposals.map((p) => [p.id, p.steps.map((s) => [s.idea, s.place]), signature(p.design), p.cost]);
  return last;
}

/** Every tenth fault, what it does, and what the finder makes of its symptoms. */
function faultsOf(design: Design) {
  const all = faults(design);
  return all
    .filter((_, n) => n % 10 === 0)
    .map((fault) => {
      const consequence = whatFails(design, fault);
      const { lost, findings } = consequence;
      return [fault.id, fault.part, isNoticed(consequence), lost.length, findings.map((f) => f.id)];
    });
}

function diagnosed(design: Design) {
  const { verdicts } = report(evaluate(design));
  const verdict = design.parts.flatMap((p) => verdicts.find((v) => v.part === p.id) ?? [])[0];
  const service = verdict?.services[0]?.service;
  if (!verdict || !service) return [];
  const steps = diagnose(design, [{ part: verdict.part, service, works: false }]);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value.map((s) => [s.match, s.distance, s.faults.map((f) => f.id)]);
  }
}

const DESIGNS: readonly (readonly [string, Design])[] = [
  ...EXAMPLES.map((e) => [e.key, e.load()] as const),
  ...TRADE_CASES.filter((_, n) => n % 6 === 0).map((c) => [c.fault, c.design] as const),
];

const all = (labels: "as drawn" | "keys") =>
  DESIGNS.map(([name, design], n) => {
    const one = () => fresh(design, labels);
    return {
      name,
      report: bare(report(evaluate(one()))),
      cures: n % 4 === 0 ? cures(one()) : [],
      faults: n % 4 === 1 ? faultsOf(one()) : [],
      diagnosed: n % 8 === 2 ? diagnosed(one()) : [],
    };
  });

test("KT1: with keys in place of all texts, everything that is found, cured and searched is the same", () => {
  const before = all("as drawn");
  expect(before.flatMap((d) => d.report.findings).length).toBeGreaterThan(20);
  expect(before.flatMap((d) => d.cures).length).toBeGreaterThan(5);
  expect(before.flatMap((d) => d.faults).length).toBeGreaterThan(5);
  expect(replaceTexts()).toBeGreaterThan(500);
  expect(all("keys")).toEqual(before);
}, 120_000);
