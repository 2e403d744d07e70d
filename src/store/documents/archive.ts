/**
 * Everything that this browser keeps, as one text to download, and back from it. Designs stand in it as their own
 * files do, so that people can read it and take a single one out. What comes back is checked piece by piece; what
 * cannot be read is kept out, with a sentence each.
 */

import { z } from "zod";
import { checkFile } from "../../design/check.ts";
import type { InputFault } from "../../design/fault.ts";
import { syntaxWords } from "../../design/faultPhrases.ts";
import { faultWords } from "../../design/faultWords.ts";
import { writeDesign } from "../../design/file.ts";
import { parseJson } from "../../design/json.ts";
import { LIMITS } from "../../design/limits.ts";
import { readPrices } from "../../paperwork/prices.ts";
import type { PriceList } from "../../remedies/prices.ts";
import { readProgress, type TrainingProgress } from "../../remedies/training/progress.ts";
import { numeral } from "../../words/numbers.ts";

import { MOST_CURRENCY_LENGTH } from "../prices.ts";
import type { ExportedDocument, ExportedRevision } from "./documentCommands.ts";

export type Archive = {
  readonly documents: readonly ExportedDocument[];
  readonly prices: PriceList;
  readonly currency: string;
  readonly practice: TrainingProgress;
  /** Choices about the page, by name: "theme". */
  readonly settings: Readonly<Record<string, string>>;
};

export type Unpacked =
  | {
      readonly ok: true;
      /** When the download was made [ms since 1970]. */
      readonly made: number;
      readonly archive: Archive;
      /** What was kept out, one sentence each. */
      readonly keptOut: readonly string[];
    }
  | { readonly ok: false; readonly problem: string };

const FORMAT = "downlead-archive";
const VERSION = 1;

/** How much a download may hold: far more than a full storage holds, and less than a page can bear. */
export const ARCHIVE_LIMITS = {
  /** Length of its text [characters]. */
  textLength: 200_000_000,
  documents: 5_000,
  /** Of one document. */
  revisions: 1_000,
  /** The design files in it may nest as deep as by themselves. */
  depth: LIMITS.depth + 6,
  values: 20_000_000,
} as const;

/** Designs in a download were stored by the app itself: none is refused for its size. */
const DESIGN_LIMITS = { depth: LIMITS.depth, values: ARCHIVE_LIMITS.values };

/** `made`: now [ms since 1970]. */
export function packArchive(archive: Archive, made: number): string {
  const { documents, prices, currency, practice, settings } = archive;
  const fields = [
    `"format": "${FORMAT}"`,
    `"version": ${VERSION}`,
    `"made": ${made}`,
    `"documents": ${listText(documents.map(documentText))}`,
    `"currency": ${JSON.stringify(currency)}`,
    `"prices": ${JSON.stringify(prices, null, 1)}`,
    `"practice": ${JSON.stringify(practice, null, 1)}`,
    `"settings": ${JSON.stringify(settings)}`,
  ];
  return `{\n${fields.join(",\n")}\n}\n`;
}

function documentText({ title, changed, text, revisions }: ExportedDocument): string {
  const fields = [
    `"title": ${JSON.stringify(title)}`,
    `"changed": ${changed}`,
    fileText(text),
    `"revisions": ${listText(revisions.map(revisionText))}`,
  ];
  return `{ ${fields.join(",\n")} }`;
}

function revisionText({ when, name, by, text }: ExportedRevision): string {
  const named = name === undefined ? [] : [`"name": ${JSON.stringify(name)}`];
  return `{ ${[`"when": ${when}`, ...named, `"by": "${by}"`, fileText(text)].join(", ")} }`;
}

/** A design as its file has it; a text that is none goes along as a text, letter by letter. */
function fileText(text: string): string {
  const plain = text.replace(/^\uFEFF/, "").trim();
  return parseJson(plain, DESIGN_LIMITS).ok ? `"file": ${plain}` : `"text": ${JSON.stringify(text)}`;
}

function listText(entries: readonly string[]): string {
  return entries.length === 0 ? "[]" : `[\n${entries.join(",\n")}\n]`;
}

const WHOLE = z.object({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  made: z.number().catch(0),
  documents: z.array(z.unknown()).max(ARCHIVE_LIMITS.documents).default([]),
  currency: z.string().catch(""),
  prices: z.unknown(),
  practice: z.unknown(),
  settings: z.record(z.string(), z.string().max(100)).catch({}),
});

const FILE = { file: z.unknown().optional(), text: z.string().optional() };

const DOCUMENT = z.object({
  title: z.string().max(LIMITS.titleLength).catch(""),
  changed: z.number().catch(0),
  ...FILE,
  revisions: z.array(z.unknown()).catch([]),
});

const REVISION = z.object({
  when: z.number(),
  name: z.string().max(LIMITS.titleLength).optional(),
  by: z.enum(["user", "itself"]).catch("user"),
  ...FILE,
});

/**
 * Reads a download. Never throws, whatever the text is. `breathe` is waited for between designs: many large ones
 * take a while, and a page has other things to do.
 */
export async function unpackArchive(
  text: string,
  breathe: () => Promise<unknown> = async () => {},
): Promise<Unpacked> {
  if (text.length > ARCHIVE_LIMITS.textLength) return refused("it is too large");
  const parsed = parseJson(text.replace(/^\uFEFF/, ""), ARCHIVE_LIMITS);
  if (!parsed.ok) return refused(brokenWords(parsed.fault));
  const problem = notAnArchive(parsed.value);
  const whole = WHOLE.safeParse(parsed.value);
  if (problem !== null || !whole.success) return refused(problem ?? "its lists are damaged");

  const { made, documents, currency, prices, practice, settings } = whole.data;
  const keptOut: string[] = [];
  const read: ExportedDocument[] = [];
  for (const [i, entry] of documents.entries()) {
    const document = await documentOf(entry, i, keptOut, breathe);
    if (document) read.push(document);
  }
  const progress = readProgress(practice);
  const lost = Object.keys(Object(practice)).filter((key) => !Object.hasOwn(progress, key)).length;
  if (lost > 0)
    keptOut.push(`Practice: the progress of ${lost === 1 ? "one case" : `${lost} cases`} is damaged.`);
  const archive: Archive = {
    documents: read,
    currency: currency.slice(0, MOST_CURRENCY_LENGTH),
    prices: readPrices(prices),
    practice: progress,
    settings,
  };
  return { ok: true, made, archive, keptOut };
}

function refused(why: string): Unpacked {
  return { ok: false, problem: `This file is no download of everything: ${why}.` };
}

function brokenWords(fault: InputFault): string {
  return fault.type === "syntax"
    ? `at line ${numeral(fault.line)}, column ${numeral(fault.column)}, ${syntaxWords(fault.what)}`
    : "it holds too many values";
}

function notAnArchive(value: unknown): string | null {
  const { format, version, documents }: Record<string, unknown> = Object(value);
  if (format === "downlead") return "it is a single design; open it with “Open a file”";
  if (format !== FORMAT) return "it holds something else";
  if (typeof version === "number" && version > VERSION) return "it was made by a newer version of this page";
  if (Array.isArray(documents) && documents.length > ARCHIVE_LIMITS.documents)
    return `it holds ${documents.length} designs; at most ${ARCHIVE_LIMITS.documents} can be added at once`;
  return null;
}

async function documentOf(
  entry: unknown,
  index: number,
  keptOut: string[],
  breathe: () => Promise<unknown>,
): Promise<ExportedDocument | undefined> {
  await breathe();
  const parsed = DOCUMENT.safeParse(entry);
  const name = (parsed.success && parsed.data.title) || `Design ${index + 1}`;
  if (!parsed.success) {
    keptOut.push(`“${name}” is damaged.`);
    return undefined;
  }
  const { changed, revisions } = parsed.data;
  const file = fileOf(parsed.data);
  if (!file.ok) keptOut.push(`“${name}” cannot be read: ${file.problem}`);
  const read: ExportedRevision[] = [];
  for (const [i, each] of revisions.entries()) {
    await breathe();
    const revision = i < ARCHIVE_LIMITS.revisions ? revisionOf(each) : undefined;
    if (revision) read.push(revision);
  }
  const lost = revisions.length - read.length;
  if (lost > 0)
    keptOut.push(`“${name}”: ${lost === 1 ? "one revision" : `${lost} revisions`} cannot be read.`);
  if (file.ok && !file.isWhole)
    keptOut.push(`“${name}”: values that this version does not know are left out.`);
  if (file.ok) {
    const { title, parts, text } = file;
    return { title, changed, parts, text, revisions: read };
  }
  // What was saved of it earlier is better than nothing: the latest revision takes its place.
  const last = read.reduce<ExportedRevision | undefined>(
    (latest, each) => (latest && latest.when >= each.when ? latest : each),
    undefined,
  );
  return last && { title: name, changed: last.when, parts: last.parts, text: last.text, revisions: read };
}

function revisionOf(entry: unknown): ExportedRevision | undefined {
  const parsed = REVISION.safeParse(entry);
  const file = parsed.success ? fileOf(parsed.data) : undefined;
  if (!parsed.success || !file?.ok) return undefined;
  const { when, name, by } = parsed.data;
  return { when, ...(name === undefined ? {} : { name }), by, parts: file.parts, text: file.text };
}

type File =
  | {
      readonly ok: true;
      readonly title: string;
      readonly parts: number;
      readonly text: string;
      /** Whether all that stood in it is known here. */
      readonly isWhole: boolean;
    }
  | { readonly ok: false; readonly problem: string };

function fileOf({ file, text }: { readonly file?: unknown; readonly text?: string | undefined }): File {
  const parsed = text === undefined ? undefined : parseJson(text, DESIGN_LIMITS);
  if (parsed && !parsed.ok) return { ok: false, problem: faultWords(parsed.fault) };
  const reading = checkFile(parsed ? parsed.value : file, "own storage");
  if (!reading.ok) return reading;
  const { design, notes } = reading;
  const { title, parts } = design;
  return { ok: true, title, parts: parts.length, text: writeDesign(design), isWhole: notes.length === 0 };
}
