/** Base64 with the alphabet for addresses, without padding (RFC 4648, section 5). */

// In pieces: a call with a million arguments would exhaust the stack.
const PIECE = 0x8000;

export function toBase64url(bytes: Uint8Array): string {
  let binary = "";
  for (let i = 0; i < bytes.length; i += PIECE) {
    binary += String.fromCharCode(...bytes.subarray(i, i + PIECE));
  }
  return btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

/**
 * The bytes of a text; null where it holds foreign signs. A last sign that is left over from a cut text
 * (length 4n + 1) carries less than a byte and is dropped.
 */
export function fromBase64url(text: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[A-Za-z0-9_-]*$/.test(text)) return null;
  const whole = text.length % 4 === 1 ? text.slice(0, -1) : text;
  const binary = atob(whole.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(binary, (sign) => sign.charCodeAt(0));
}
