import type { Problem } from "@causey/engine/formula";
import type { PointColumns } from "@causey/engine/survey";

/** Unit of every length in a file: positions, heights, accuracy. */
export type PointUnit = "m" | "ft" | "us-ft";
export type DecimalSign = "point" | "comma";
export type DateOrder = "ymd" | "dmy" | "mdy";

export interface PointOptions {
  /** Names of the columns as the file's heads give them, in any case; "#3" is the third column of a file without heads. */
  readonly columns: PointColumns;
  /** International foot 0.3048 m, US survey foot 1200/3937 m, both exact. */
  readonly unit: PointUnit;
  readonly decimal: DecimalSign;
  readonly date_order: DateOrder;
  /** Heights on the plan's datum that are known at the site: marks, check shots, water levels [m]. */
  readonly known_heights_m?: readonly number[];
  /** "as-read" for a look into the file: heights that cannot be ground are warned of and not refused. */
  readonly heights?: "ground" | "as-read";
}

export type LeftOutReason =
  | "no-position"
  | "position-zero"
  | "no-height"
  | "height-zero"
  | "no-data-value"
  | "no-reading"
  | "same-point";

/** A row of the file that is not among the points, and why. */
export interface LeftOut {
  /** Line of the file, from 1. */
  readonly line: number;
  readonly id: string | null;
  readonly reason: LeftOutReason;
  /** What stands there. */
  readonly value: string;
}

/** Words of a file's rows, decoded only when asked for. */
export interface Words {
  readonly length: number;
  readonly at: (row: number) => string;
}

/** Points in the order of the file, lengths in metres; one place in every array for each point. */
export interface PointTable {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Standard deviation that the instrument claims [m], NaN = not stated; null without the column. */
  readonly accuracy: Float32Array | null;
  /** Days since 1970-01-01, NaN = not stated; null without the column. */
  readonly days: Float32Array | null;
  readonly ids: Words | null;
  readonly codes: Words | null;
  /** Line of the file, from 1. */
  readonly lines: Uint32Array;
}

export interface PointsRead {
  readonly points: PointTable;
  /** The first 10,000 rows that were left out, in the order of the file. */
  readonly left_out: readonly LeftOut[];
  readonly left_out_count: number;
  readonly warnings: readonly Problem[];
}
