import { decodeText } from "../files/index.ts";
import { Findings } from "../problem/index.ts";
import { PointReader } from "./point-reader.ts";
import type { PointOptions, PointsRead } from "./types.ts";

/** Largest file in UTF-16, which has to be turned into UTF-8 as one text [bytes]. */
const UTF16_LIMIT = 100_000_000;

/**
 * Reads survey points from CSV. Works in browser and Node.
 *
 * file   its name, for messages
 * bytes  the whole file; `PointReader` takes it in pieces
 * The delimiter (comma, semicolon, tab) is read off the heads; line ends and byte order mark are of any kind. Rows
 * without a position or a height are left out and listed. Throws `ProblemError` with everything found: cells that are
 * no numbers, formulas, dates that cannot be of the order, degrees, feet read as metres, heights above the ellipsoid.
 */
export function readPoints(file: string, bytes: Uint8Array, options: PointOptions): PointsRead {
  const isUtf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  const plain = isUtf16
    ? new TextEncoder().encode(decodeText(new Findings(file), bytes, UTF16_LIMIT))
    : bytes;
  const reader = new PointReader(file, options);
  reader.expect(plain.length);
  reader.push(plain);
  return reader.finish();
}
