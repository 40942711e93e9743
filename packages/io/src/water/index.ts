export { readSeries, type SeriesRead } from "./read-series.ts";
export { readTime, type TimeRead } from "./read-time.ts";
export { dateOrder, type DateOrder } from "./date-order.ts";
export { zoneOf, type Zone } from "./zone.ts";
