import { Inflate, Unzlib } from "fflate";

/** Bytes pushed at a time; DEFLATE makes at most 1032 bytes of one, so a bomb is noticed after 17 MB. */
const PUSH = 16_384;

/** What went wrong while unpacking: too much came out, or the data is damaged. */
export class InflateFault extends Error {
  readonly why: "too-much" | "damaged";
  constructor(why: "too-much" | "damaged", cause?: unknown) {
    super(why, { cause });
    this.why = why;
  }
}

/**
 * DEFLATE data (RFC 1951), bare or with the zlib wrapper (RFC 1950), with a bound on what may come out.
 *
 * most  bytes; the work stops at once beyond them
 * Throws `InflateFault`.
 */
export function inflate(data: Uint8Array, most: number, wrapper: "zlib" | "none"): Uint8Array {
  const out = new Uint8Array(most);
  let length = 0;
  const take = (chunk: Uint8Array): void => {
    if (length + chunk.length > most) throw new InflateFault("too-much");
    out.set(chunk, length);
    length += chunk.length;
  };
  try {
    const stream = wrapper === "zlib" ? new Unzlib(take) : new Inflate(take);
    for (let at = 0; at < data.length; at += PUSH)
      stream.push(data.subarray(at, at + PUSH), at + PUSH >= data.length);
  } catch (cause) {
    throw cause instanceof InflateFault ? cause : new InflateFault("damaged", cause);
  }
  return out.subarray(0, length);
}
