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
export { readShearReadings, type ShearColumns, type ShearOptions, type ShearRead } from "./read-shear.ts";
export {
  readProbeStations,
  type StationColumns,
  type StationOptions,
  type StationsRead,
} from "./read-stations.ts";
export {
  FIRMNESS,
  readPenetrometer,
  type Firmness,
  type PenetrometerGroup,
  type PenetrometerOptions,
  type PenetrometerPlace,
  type PenetrometerRead,
} from "./read-penetrometer.ts";
export { readDate } from "./read-date.ts";
export { columnHeads } from "./column-heads.ts";
export { readCheckShots, type CheckShotsRead } from "./read-check-shots.ts";
