/** Deflate by the platform's own streams, which browsers and Node share. */

export async function deflate(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  const packed = await through(new CompressionStream("deflate-raw"), bytes, Infinity);
  // Deflating has no limit and cannot fail on bytes.
  return typeof packed === "string" ? new Uint8Array() : packed;
}

/** Unpacks as a stream and stops at the limit [bytes], so that a small text cannot fill the memory. */
export async function inflate(
  bytes: Uint8Array<ArrayBuffer>,
  limit: number,
): Promise<Uint8Array<ArrayBuffer> | "too large" | "broken"> {
  return await through(new DecompressionStream("deflate-raw"), bytes, limit);
}

async function through(
  stream: CompressionStream | DecompressionStream,
  bytes: Uint8Array<ArrayBuffer>,
  limit: number,
): Promise<Uint8Array<ArrayBuffer> | "too large" | "broken"> {
  const writer = stream.writable.getWriter();
  // A fault shows at the reading end too, where it is dealt with.
  writer.write(bytes).catch(ignore);
  writer.close().catch(ignore);

  const reader = stream.readable.getReader();
  const pieces: Uint8Array[] = [];
  let length = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) break;
      length += value.length;
      if (length > limit) {
        await reader.cancel().catch(ignore);
        return "too large";
      }
      pieces.push(value);
    }
  } catch {
    return "broken";
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

function ignore(): void {}
