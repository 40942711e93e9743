import { closeSync, mkdirSync, openSync, readFileSync, readSync, rmSync, writeSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { PointReader, type PointOptions } from "@causey/io/points";
import { temporaryFolder } from "../support/shell.ts";

/** 10 million with CAUSEY_POINTS=10000000, about a minute; a tenth of them in every run. */
const COUNT = Number(process.env["CAUSEY_POINTS"] ?? 1_000_000);
const COLS = 4000;
/** Bytes that one point may cost, reading and judging it; objects would cost ten times as much. */
const BYTES_A_POINT = 150;
const PIECE = 1 << 20;

const folder = temporaryFolder();
const file = join(folder, "survey.csv");
const spot = (i: number): readonly [number, number, number] => [
  412_000 + (i % COLS) * 0.25,
  4_612_000 + Math.floor(i / COLS) * 0.25,
  1.5 + 0.4 * Math.sin(i / 997),
];
const row = (i: number): string => {
  const [x, y, z] = spot(i);
  return `S${i},${x.toFixed(2)},${y.toFixed(2)},${z.toFixed(3)}\n`;
};

beforeAll(() => {
  mkdirSync(folder, { recursive: true });
  const out = openSync(file, "w");
  writeSync(out, "id,x,y,z\n");
  for (let from = 0; from < COUNT; from += 50_000)
    writeSync(out, Array.from({ length: Math.min(50_000, COUNT - from) }, (_, k) => row(from + k)).join(""));
  closeSync(out);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const options: PointOptions = {
  columns: { id: "id", x: "x", y: "y", z: "z", code: null, accuracy: null, date: null },
  unit: "m",
  decimal: "point",
  date_order: "ymd",
};

/** Hands the file on in pieces of a megabyte; the memory that the process holds in arrays at most, above the start. */
function streamed(reader: PointReader): number {
  const start = process.memoryUsage().arrayBuffers;
  let most = 0;
  const input = openSync(file, "r");
  const piece = new Uint8Array(PIECE);
  for (;;) {
    const n = readSync(input, piece, 0, PIECE, null);
    if (n === 0) break;
    reader.push(piece.slice(0, n));
    most = Math.max(most, process.memoryUsage().arrayBuffers - start);
  }
  closeSync(input);
  return most;
}

test(`${COUNT.toLocaleString("en")} points in pieces of 1 MB: every one in its place, in memory that does not hold the file`, () => {
  const reader = new PointReader("survey.csv", options);
  const most = streamed(reader);
  const { points, left_out_count, warnings } = reader.finish();
  expect(points.z).toHaveLength(COUNT);
  expect(left_out_count).toBe(0);
  expect(warnings).toEqual([]);
  for (let i = 0; i < COUNT; i += 9973) {
    const [x, y, z] = spot(i);
    expect([points.x[i], points.y[i], points.z[i], points.ids!.at(i), points.lines[i]]).toEqual([
      x,
      y,
      Number(z.toFixed(3)),
      `S${i}`,
      i + 2,
    ]);
  }
  expect(most / COUNT).toBeLessThan(BYTES_A_POINT);
});

test("a formula in the last row of the same file is named with its line, and no point comes of it", () => {
  const reader = new PointReader("survey.csv", options);
  streamed(reader);
  reader.push(new TextEncoder().encode("last,412000.1,4612000.1,=A1\n"));
  expect(() => reader.finish()).toThrow(
    expect.objectContaining({
      problems: [
        expect.objectContaining({ place: `line ${COUNT + 2}`, value: "=A1", code: "points-formula" }),
      ],
    }) as Error,
  );
  expect(readFileSync(file).length).toBeGreaterThan(COUNT * 25);
});
