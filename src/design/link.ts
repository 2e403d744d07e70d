/**
 * The share link: a whole design in the fragment of an address, "d1." and base64url. Nothing goes to a server.
 *
 * Behind the mark: 4 bytes CRC-32 of the compact JSON, 3 bytes length of what follows, and the compact JSON
 * deflated (RFC 1951). Length and checksum tell a link that was cut short from one that was altered.
 */
import { numeral, numeralAsSet } from "../words/numbers.ts";
import { fromBase64url, toBase64url } from "./base64url.ts";
import { checkFile, type DesignReading } from "./check.ts";
import { compact, expand } from "./compact.ts";
import { crc32 } from "./crc32.ts";
import { deflate, inflate } from "./deflate.ts";
import type { Design } from "./design.ts";
import { parseJson } from "./json.ts";
import { LIMITS } from "./limits.ts";
import { type LinkCandidate, linkCandidates } from "./linkHealing.ts";

/** Links longer than this are cut by many mail and chat programs [characters]; offer the file instead. */
export const COMFORTABLE_LINK_LENGTH = 8_000;

const MARK = "d1.";
const HEADER = 7;
/** Deflate makes what it cannot pack a little longer, base64 takes four signs for three bytes. */
const MOST_SIGNS = Math.ceil(((LIMITS.linkBytes * 1.01 + HEADER) * 4) / 3);
/** Percent signs and other codings take up to three signs for one. */
const MOST_TEXT = 3 * MOST_SIGNS;

export type Packed =
  | { readonly ok: true; readonly fragment: string }
  | { readonly ok: false; readonly problem: string };

/** The fragment of a link to this design, or why no link can hold it. */
export async function shareLink(design: Design): Promise<Packed> {
  const size = new TextEncoder().encode(JSON.stringify(compact(design))).length;
  if (size <= LIMITS.linkBytes) return { ok: true, fragment: await encodeLink(design) };
  const [has, most] = [numeral(size / 1e6, 1, 1), numeral(LIMITS.linkBytes / 1e6, 1, 1)];
  return {
    ok: false,
    problem: `This design is too large for a link: it has ${has} MB, and a link holds at most ${most} MB. Pass it on as a file.`,
  };
}

/** The fragment of a link, without "#"; whether a reader takes one of that size, `shareLink` knows. */
export async function encodeLink(design: Design): Promise<string> {
  const text = new TextEncoder().encode(JSON.stringify(compact(design)));
  const packed = await deflate(text);
  const bytes = new Uint8Array(HEADER + packed.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, crc32(text));
  view.setUint8(4, packed.length >>> 16);
  view.setUint16(5, packed.length & 0xffff);
  bytes.set(packed, HEADER);
  return MARK + toBase64url(bytes);
}

/**
 * Reads a link: its fragment, the whole address, or what a mail program made of either. Never throws; unpacks at
 * most a stated size for each reading of the text.
 */
export async function decodeLink(text: string): Promise<DesignReading> {
  if (text.length > MOST_TEXT) return bad(TOO_LONG);
  const candidates = linkCandidates(text);
  let trouble: string | null = null;
  for (const candidate of candidates) {
    const unpacked = await unpack(candidate);
    if (unpacked.ok) return readText(unpacked.text);
    trouble ??= unpacked.problem;
  }
  return bad(trouble ?? "This address holds no design: one would begin with “#d1.”.");
}

type Unpacked =
  | { readonly ok: true; readonly text: Uint8Array }
  | { readonly ok: false; readonly problem: string };

async function unpack(candidate: LinkCandidate): Promise<Unpacked> {
  const { version } = candidate;
  if (Number(version) > 1)
    return no(`This link was made by a newer edition (mark “d${version}.”); this one reads “${MARK}”.`);
  if (version !== "1") return no(`This address holds no design: the mark “d${version}.” was never in use.`);
  const body = bodyOf(candidate);
  if (body.length > MOST_SIGNS) return no(TOO_LONG);
  const bytes = fromBase64url(body);
  const due = bytes && packedEnd(bytes);
  if (!bytes || due === null || bytes.length < due || body.length % 4 === 1) {
    const missing =
      bytes && due ? `: about ${numeralAsSet(missingPercent(bytes.length, due))} % is missing` : "";
    return broken(
      body,
      `This link was cut short${missing}. Copy it again to its very end, or ask for the file.`,
    );
  }
  const text = await inflate(bytes.subarray(HEADER, due), LIMITS.linkBytes);
  if (text === "too large")
    return no(
      `This link unpacks to more than ${numeralAsSet(LIMITS.linkBytes / 1e6)} MB and was not opened.`,
    );
  if (text === "broken" || bytes.length > due || crc32(text) !== new DataView(bytes.buffer).getUint32(0))
    return broken(body, "This link is damaged: its checksum is wrong. Copy it again, or ask for the file.");
  return { ok: true, text };
}

const TOO_LONG = "This link is too long to hold a design.";
const WRONG_CASE =
  "This link is damaged: its capitals and small letters were changed on the way. Copy it from where it was made, or ask for the file.";

function readText(bytes: Uint8Array): DesignReading {
  const json = parseJson(new TextDecoder().decode(bytes), LIMITS);
  if (!json.ok) return bad(NO_DESIGN);
  const file = expand(json.value);
  if (file.ok) return checkFile(file.value);
  return bad(file.why === "no design" ? NO_DESIGN : "This link holds more parts or wires than a design can.");
}

const NO_DESIGN = "This link holds no design: its content has another form.";

/** The runs in one, up to where the link itself says that it ends, if something else followed there. */
function bodyOf({ runs }: LinkCandidate): string {
  const whole = runs.join("");
  const head = fromBase64url(whole.slice(0, 12));
  const end = head && packedEnd(head);
  if (!end) return whole;
  const signs = Math.ceil((end * 4) / 3);
  let at = 0;
  // A hyphen or an underscore behind the link cannot be told from its own signs but by the place.
  const isEnd = runs.some((run) => {
    at += run.length;
    return at === signs;
  });
  return isEnd || /^[_-]*$/.test(whole.slice(signs)) ? whole.slice(0, signs) : whole;
}

/** Where the packed text ends by the word of the link itself [bytes]; null where the link is too short to say. */
function packedEnd(bytes: Uint8Array): number | null {
  const [, , , , high, middle, low] = bytes;
  if (high === undefined || middle === undefined || low === undefined) return null;
  return HEADER + (high << 16) + (middle << 8) + low;
}

/** Among so many letters of base64 there are capitals and small ones, unless somebody made them alike. */
function broken(body: string, problem: string): Unpacked {
  const letters = body.replace(/[^A-Za-z]/g, "");
  const isOneCase = letters.length >= 24 && (!/[a-z]/.test(letters) || !/[A-Z]/.test(letters));
  return no(isOneCase ? WRONG_CASE : problem);
}

function bad(problem: string): DesignReading {
  return { ok: false, problem };
}

function no(problem: string): Unpacked {
  return { ok: false, problem };
}

function missingPercent(has: number, due: number): number {
  return Math.max(1, Math.round((1 - has / due) * 100));
}
