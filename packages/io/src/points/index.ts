export { readPoints } from "./read-points.ts";
export { MAX_POINTS, PointReader } from "./point-reader.ts";
export { M_PER_US_FT } from "./units.ts";
export { checkEllipsoid } from "./suspicions.ts";
export type {
  DateOrder,
  DecimalSign,
  LeftOut,
  LeftOutReason,
  PointOptions,
  PointTable,
  PointUnit,
  PointsRead,
  Words,
} from "./types.ts";
