export type * from "./types.ts";
export type * from "./tables.ts";
export type * from "./deck-tables.ts";
export type * from "./load-tables.ts";
export type * from "./context.ts";
export {
  classRows,
  densityOfClass,
  densityOfGrade,
  gradeRows,
  isMetric,
  sameYard,
  timberRow,
  timberRows,
  type TimberRow,
} from "./timber-rows.ts";
export { ovenDryGravity } from "./oven-dry-gravity.ts";
export { closedEdges, takeOff, type CountedLayout } from "./take-off.ts";
export { moduleMasses, type PartMass, type PartMasses } from "./part-masses.ts";
export { cuttingProblems, stockPrices, type SizeCutting, type Unpriced } from "./cutting-problems.ts";
export { cheapestPacks, type Pack } from "./packs.ts";
export { missingPrices } from "./missing-prices.ts";
export { orderList, toCents, type SizePlan } from "./order-list.ts";
export { OLD_PRICE_DAYS, priceProblems } from "./price-problems.ts";
