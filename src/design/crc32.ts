/** The CRC-32 of gzip and PNG (RFC 1952, section 8: polynomial 0xEDB88320, reflected). */

const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k += 1) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  return c;
});

/** As an unsigned 32-bit number. */
export function crc32(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (const byte of bytes) c = (c >>> 8) ^ (TABLE[(c ^ byte) & 0xff] ?? 0);
  return (c ^ 0xffffffff) >>> 0;
}
