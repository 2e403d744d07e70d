/**
 * The share link: a whole design in the fragment of an address, "d1." and base64url. Nothing goes to a server.
 *
 * Behind the mark: 4 bytes CRC-32 of the compact JSON, 3 bytes length of what follows, and the compact JSON
 * deflated (RFC 1951). Length and checksum tell a link that was cut short from one that was altered.
 */
import { fromBase64url, toBase64url } from "./base64url.ts";
import { checkFile, type Reading } from "./check.ts";
import { compact, expand } from "./compact.ts";
import { crc32 } from "./crc32.ts";
import { deflate, inflate } from "./deflate.ts";
import type { Design } from "./design.ts";
import { parseJson } from "./json.ts";
import { LIMITS } from "./limits.ts";

/** Links longer than this are cut by many mail and chat programs [characters]; offer the file instead. */
export const COMFORTABLE_LINK_LENGTH = 8_000;

const MARK = "d1.";
const HEADER = 7;

/** The fragment of a link to this design, without "#". */
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

/** Reads the fragment of a link, with or without "#". Never throws; unpacks at most a stated size. */
export async function decodeLink(fragment: string): Promise<Reading> {
  // What a sentence or a mail program may have put around the address.
  const link = fragment
    .trim()
    .replace(/^#/, "")
    .replace(/[^A-Za-z0-9_-]+$/, "");
  const version = /^d(\d{1,6})(?:\.|$)/.exec(link)?.[1];
  if (version === undefined) return bad("This address holds no design: one would begin with “#d1.”.");
  if (Number(version) > 1) {
    return bad(`This link was made by a newer edition (mark “d${version}.”); this one reads “${MARK}”.`);
  }
  if (version !== "1") return bad(`This address holds no design: the mark “d${version}.” was never in use.`);
  const body = link.slice(MARK.length);
  if (body.length > LIMITS.linkBytes) return bad("This link is too long to hold a design.");

  const bytes = fromBase64url(body);
  if (!bytes)
    return bad("This link is damaged: it holds signs that no link has. Copy it again, or ask for the file.");
  const view = new DataView(bytes.buffer);
  const due = bytes.length < HEADER ? null : HEADER + (view.getUint8(4) << 16) + view.getUint16(5);
  if (due === null || bytes.length < due || body.length % 4 === 1) {
    const missing = due === null ? "" : `: about ${missingPercent(bytes.length, due)} % is missing`;
    return bad(`This link was cut short${missing}. Copy it again to its very end, or ask for the file.`);
  }

  const unpacked = await inflate(bytes.subarray(HEADER, due), LIMITS.linkBytes);
  if (unpacked === "too large") {
    return bad(`This link unpacks to more than ${LIMITS.linkBytes / 1e6} MB and was not opened.`);
  }
  if (unpacked === "broken" || bytes.length > due || crc32(unpacked) !== view.getUint32(0)) {
    return bad("This link is damaged: its checksum doesn't fit. Copy it again, or ask for the file.");
  }
  const json = parseJson(new TextDecoder().decode(unpacked), LIMITS.depth);
  if (!json.ok) return bad(`This link holds no design: ${json.problem}.`);
  const file = expand(json.value);
  if (!file.ok) return bad(`This link holds no design: ${file.problem}.`);
  return checkFile(file.value);
}

function bad(problem: string): Reading {
  return { ok: false, problem };
}

function missingPercent(has: number, due: number): number {
  return Math.max(1, Math.round((1 - has / due) * 100));
}
