import type { Problem } from "@causey/engine/formula";
import type { CheckShot } from "@causey/engine/survey";
import { Findings, quote } from "../problem/index.ts";
import { readPoints } from "./read-points.ts";
import type { LeftOut, PointOptions, PointTable } from "./types.ts";

export interface CheckShotsRead {
  readonly shots: readonly CheckShot[];
  readonly left_out: readonly LeftOut[];
  readonly warnings: readonly Problem[];
}

/** More than a plan holds; a survey of the ground itself belongs in a terrain file. */
const MOST = 10_000;

/**
 * Reads check shots from CSV: id, x, y, height, accuracy, date, as `readPoints` does.
 *
 * Names lose their blanks, as a plan's ids have none; rows of a file without names are called L2, L3 by their lines.
 * Throws `ProblemError` with everything found, a name that stands twice among it.
 */
export function readCheckShots(file: string, bytes: Uint8Array, options: PointOptions): CheckShotsRead {
  const { points, left_out, warnings } = readPoints(file, bytes, options);
  const found = new Findings(file);
  if (points.z.length > MOST)
    found.stop({
      code: "shots-too-many",
      place: "file",
      value: `${points.z.length} rows`,
      message: `The file holds more than the ${MOST} check shots that a plan holds.`,
      mend: "Give so many points as the terrain of the plan (survey points), or keep some of them.",
    });
  const lines = new Map<string, number>();
  const shots = Array.from(points.z, (_, i) => shotOf(points, i));
  shots.forEach(({ id }, i) => checkName(found, lines, id, points.lines[i]!));
  found.throwIfErrors();
  return { shots, left_out, warnings: warnings.filter((w) => w.code !== "points-same-name") };
}

function shotOf({ x, y, z, accuracy, days, ids, lines }: PointTable, i: number): CheckShot {
  const name = ids?.at(i).trim().replaceAll(/\s+/g, "-") ?? "";
  const [a, day] = [accuracy?.[i] ?? NaN, days?.[i] ?? NaN];
  return {
    id: name === "" ? `L${lines[i]!}` : name,
    x: x[i]!,
    y: y[i]!,
    z_m: z[i]!,
    // Kept in 32 bits while reading: a micrometre is all that these digits mean.
    accuracy_m: Number.isNaN(a) ? null : Number(a.toFixed(6)),
    date: Number.isNaN(day) ? null : new Date(day * 86_400_000).toISOString().slice(0, 10),
  };
}

function checkName(found: Findings, lines: Map<string, number>, id: string, line: number): void {
  const first = lines.get(id);
  if (first !== undefined)
    found.error({
      code: "shot-twice",
      place: `line ${line}`,
      value: id,
      message: `Line ${first} already holds the check shot ${quote(id)}.`,
      mend: "Name every check shot once.",
    });
  if (!/^\P{Cc}{1,80}$/u.test(id))
    found.error({
      code: "shot-name",
      place: `line ${line}`,
      value: id,
      message: "The name of a check shot is longer than 80 signs.",
      mend: "Give it a short name.",
    });
  lines.set(id, line);
}
