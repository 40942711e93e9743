export { readSeries, type SeriesRead } from "./read-series.ts";
export { readTime, zoneOf, type TimeRead, type Zone } from "./read-time.ts";
