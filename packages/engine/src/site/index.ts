export type * from "./types.ts";
export { groundAt, hashRaster, rasterExtent } from "./terrain.ts";
export {
  bounds,
  convexOverlap,
  isInside,
  polygonsArea,
  rectangle,
  ringArea,
  rowCrossings,
  segmentDistance,
  signedDistance,
  type Point,
} from "./geometry.ts";
export { isShut } from "./closure.ts";
export { monthDayWords, readMonthDay } from "./month-day.ts";
export { ruledArea } from "./ruled-area.ts";
export { contourLevels, contourLines, type ContourLine } from "./contours.ts";
