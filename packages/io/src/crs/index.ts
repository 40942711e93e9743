export { crsFromEpsg, epsgInfo, metreTwin, type EpsgInfo } from "./epsg.ts";
export { designProj, lonLatAccuracy, type LonLatAccuracy } from "./proj-string.ts";
export { gridScale, toGrid, toLonLat, type PointMap } from "./transform.ts";
export { comparePrj, type PrjAnswer } from "./prj.ts";
export { crsOf } from "./crs-of.ts";
export { crsName, planCrsOf, sameCrs, type PlanCrs } from "./plan-crs.ts";
