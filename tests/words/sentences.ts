/** Every text that is made of a design: for tests that look at the words alone. */
import { z } from "zod";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Evaluation, PartRecord } from "../../src/evaluate/evaluation.ts";
import type { Finding, Verdict } from "../../src/findings/finding.ts";
import { report } from "../../src/findings/report.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import { kindOf } from "../../src/parts/catalogue.ts";
import { type FieldMeta, fieldMeta } from "../../src/parts/fields.ts";
import { candidatesFor } from "../../src/remedies/candidates/index.ts";
import { difference } from "../../src/remedies/difference.ts";
import { workOf } from "../../src/remedies/work.ts";
import { stepReason, stepTitle } from "../../src/sentences/cures/step.ts";
import { namesIn } from "../../src/sentences/cures/told.ts";
import { workEffort, workWords } from "../../src/sentences/cures/work.ts";
import { cureOf, explainFinding, messageOf } from "../../src/sentences/finding.ts";
import { missingSentences, tunerSentence, verdictSentence } from "../../src/sentences/verdict.ts";
import { tellCommand } from "../../src/sentences/walk/command.ts";
import { tellSignal } from "../../src/sentences/walk/signal.ts";
import { tellSupply } from "../../src/sentences/walk/supply.ts";
import { WANTED_SERVICES } from "../../src/signal/carrier.ts";
import { bandWords } from "../../src/ui/canvas/bands.ts";
import { spectrumWords } from "../../src/ui/canvas/words.ts";
import { loadLines } from "../../src/ui/features/inspector/sections/loads.ts";
import { siteWords } from "../../src/ui/kit/told/siteWords.ts";

/** A sentence begins with a capital and ends with a stop; a phrase (label, title, clause) does neither. */
export type Text = { readonly of: string; readonly words: string; readonly isSentence: boolean };

const sentence = (of: string, words: string): Text => ({ of, words, isSentence: true });
const phrase = (of: string, words: string): Text => ({ of, words, isSentence: false });

/** The same design with plain words for whatever people write themselves: that is not looked at. */
export function plainly(design: Design): Design {
  return {
    ...design,
    parts: design.parts.map((part) => ({
      ...part,
      label: part.id,
      options: plainOptions(part.options, kindOf(part.kind)?.options.shape ?? {}),
    })),
  };
}

function plainOptions(options: Record<string, unknown>, shape: z.ZodRawShape): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(options).map(([key, value]) => {
      const schema = shape[key];
      const meta = schema instanceof z.ZodType ? fieldMeta(schema) : undefined;
      if (meta?.control === "text") return [key, String(value).trim() === "" ? "" : "Name"];
      return [key, Array.isArray(value) ? value.map((row) => plainRow(row, meta)) : value];
    }),
  );
}

function plainRow(row: unknown, meta: FieldMeta | undefined): unknown {
  return typeof row === "object" && row !== null ? plainOptions({ ...row }, meta?.row?.shape ?? {}) : row;
}

/** What the verdict says: findings, receivers, outlets. */
export function* verdictTexts(evaluation: Evaluation): Generator<Text> {
  const found = report(evaluation);
  for (const finding of found.findings) yield* findingTexts(finding, evaluation);
  for (const verdict of found.verdicts) yield* placeTexts(verdict, evaluation);
  yield phrase("line", siteWords({ design: evaluation.design, evaluation, report: found }));
}

function* findingTexts(finding: Finding, evaluation: Evaluation): Generator<Text> {
  yield sentence(`finding ${finding.rule}`, messageOf(finding, evaluation));
  const cure = cureOf(finding, evaluation);
  if (cure) yield sentence(`what would cure ${finding.rule}`, cure);
}

function* placeTexts(verdict: Verdict, evaluation: Evaluation): Generator<Text> {
  yield sentence("verdict", verdictSentence(verdict, evaluation));
  for (const service of verdict.services)
    for (const reason of missingSentences(service, evaluation)) yield phrase("reason", reason);
  for (const tuner of verdict.tuners) {
    const words = tunerSentence(tuner, evaluation);
    if (words) yield sentence("tuner", words);
  }
}

/** What the panes add to it: explanations, walks, captions, bands on wires, candidates for cures. */
export function* paneTexts(evaluation: Evaluation): Generator<Text> {
  const { design, records } = evaluation;
  const found = report(evaluation);
  for (const finding of found.findings) {
    const told = explainFinding(finding, evaluation);
    for (const voice of ["customer", "trade", "measure"] as const)
      yield sentence(`${voice} ${finding.rule}`, told[voice]);
    for (const mark of told.picture?.marks ?? []) yield phrase(`mark ${finding.rule}`, mark.label);
  }
  for (const record of records) yield* partTexts(evaluation, record);
  const site = { design, evaluation, report: found };
  for (const { step, apply } of candidatesFor(site, found.findings)) {
    const changed = apply(design);
    const names = namesIn(design, changed ?? design);
    yield phrase(`cure ${step.idea}`, stepTitle(step, names));
    yield sentence(`reason of ${step.idea}`, stepReason(step, names));
    for (const work of changed ? workOf(difference(design, changed), PLACEHOLDER_PRICES) : [])
      yield phrase("work", `${workWords(work, names)}, ${workEffort(work)}`);
  }
}

function* partTexts(evaluation: Evaluation, record: PartRecord): Generator<Text> {
  const { part, kind, ports } = record;
  const caption = kind.caption(part.options);
  if (caption) yield phrase(`caption ${kind.kind}`, caption);
  for (const { words } of loadLines(record)) yield phrase("load", words);
  for (const spectrum of Object.values(record.outputs)) {
    yield phrase("wire", spectrumWords(spectrum));
    for (const band of spectrum.bands) yield phrase("band", bandWords(band));
  }
  if (kind.family === "use" || kind.family === "deliver")
    for (const service of WANTED_SERVICES)
      for (const line of tellSignal(evaluation, { part: part.id, service }).lines)
        yield sentence("walk", line);
  if (kind.family === "use")
    for (const port of ports) {
      for (const line of tellSupply(evaluation, { part: part.id, port: port.id }).lines)
        yield sentence("supply", line);
      for (const line of tellCommand(evaluation, { part: part.id, port: port.id }).lines)
        yield sentence("command", line);
    }
}

/** All of it. */
export function* textsOf(design: Design): Generator<Text> {
  const evaluation = evaluate(plainly(design));
  yield* verdictTexts(evaluation);
  yield* paneTexts(evaluation);
}
