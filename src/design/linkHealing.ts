/**
 * Links as mail and chat programs hand them on: broken over lines, packed into other codings, with signs around
 * them. Here every way back is thought of; whether one was right, the checksum inside the link decides.
 */

/** What may be the text of a link: its mark, and the runs of signs that links are made of behind it. */
export type LinkCandidate = {
  /** The number behind the "d". */
  readonly version: string;
  /** Parted by whatever came between: a line break, a bracket, a full stop. */
  readonly runs: readonly string[];
};

/** The readings of a text that may hold a link, the most likely first; none where it holds no mark. */
export function linkCandidates(text: string): readonly LinkCandidate[] {
  const plain = decoded(text);
  const readings = [plain, quotedPrintable(plain)].flatMap((each) => [dashed(each, "-"), dashed(each, "--")]);
  return [...new Set(readings)].flatMap((reading) =>
    marksIn(reading).map(({ version, end }) => ({
      version,
      runs: reading
        .slice(end)
        .split(/[^A-Za-z0-9_-]+/)
        .filter((run) => run !== ""),
    })),
  );
}

/** Whether an address with this fragment was meant as a share link, healthy or not. */
export function isLinkFragment(fragment: string): boolean {
  return marksIn(decoded(fragment.slice(0, FRONT))).length > 0;
}

/** A mark stands in front, at most behind a whole address [characters]. */
const FRONT = 2_000;
const MOST_MARKS = 3;

type Mark = { readonly version: string; readonly end: number };

/** A mark begins the text or follows a sign that no link holds; behind "#" it is more likely than elsewhere. */
function marksIn(text: string): readonly Mark[] {
  const found = [...text.slice(0, FRONT).matchAll(/(?<![\p{L}\p{N}-])d(\d{1,6})(?:\.|$)/giu)];
  const marks = found.map((mark) => ({
    version: mark[1] ?? "",
    end: mark.index + mark[0].length,
    isBehindHash: text[mark.index - 1] === "#",
  }));
  const likely = [
    ...marks.filter((mark) => mark.isBehindHash),
    ...marks.filter((mark) => !mark.isBehindHash),
  ];
  return likely.slice(0, MOST_MARKS);
}

/** Without percent signs, entities and invisible signs; wide and other forms of a sign become the usual one. */
function decoded(text: string): string {
  let plain = text;
  for (let layer = 0; layer < MOST_LAYERS; layer++) {
    const next = plain.replace(ENTITY, entity).replace(PERCENT, percent);
    if (next === plain) break;
    plain = next;
  }
  return plain.normalize("NFKC").replace(/\p{Cf}/gu, "");
}

/** A link that was packed twice has percent signs for percent signs. */
const MOST_LAYERS = 3;
const PERCENT = /(?:%[0-9A-Fa-f]{2})+/g;
const ENTITY = /&(?:#(\d{1,7})|#[xX]([0-9A-Fa-f]{1,6})|([A-Za-z]{2,8}));/g;
const NAMED = new Map([
  ["amp", "&"],
  ["num", "#"],
  ["period", "."],
  ["lowbar", "_"],
  ["hyphen", "-"],
  ["dash", "-"],
]);

function percent(coded: string): string {
  try {
    return decodeURIComponent(coded);
  } catch {
    return " ";
  }
}

function entity(_: string, decimal?: string, hexadecimal?: string, name = ""): string {
  const code = decimal ? Number(decimal) : hexadecimal ? Number.parseInt(hexadecimal, 16) : undefined;
  if (code === undefined) return NAMED.get(name) ?? " ";
  return code <= 0x10ffff ? String.fromCodePoint(code) : " ";
}

/** The coding of mails (RFC 2045, section 6.7): soft line breaks, and "=3D" for a sign. */
function quotedPrintable(text: string): string {
  return text
    .replace(/=[ \t]*\r?\n/g, "")
    .replace(/=([0-9A-F]{2})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}

/** Programs that better typing make a long dash of one hyphen or of two. */
function dashed(text: string, hyphens: string): string {
  return text.replace(/[\u2010-\u2015\u2212]/g, hyphens);
}
