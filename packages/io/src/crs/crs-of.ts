import type { Crs } from "@causey/engine/site";
import { crsFromEpsg } from "./epsg.ts";
import type { PlanCrs } from "./plan-crs.ts";

/** The plan's horizontal system; the register of systems is loaded only for an EPSG code. Throws `ProblemError`. */
export const crsOf = async (crs: PlanCrs): Promise<Crs> =>
  "epsg" in crs ? crsFromEpsg(crs.epsg) : { kind: "local", name: crs.local };
