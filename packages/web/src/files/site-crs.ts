import type { Plan } from "@causey/engine/plan";
import type { Crs } from "@causey/engine/site";
import { crsFromEpsg } from "@causey/io/crs";

/** The plan's horizontal system; the register of systems is fetched only for an EPSG code. Throws `ProblemError`. */
export const siteCrs = async ({ crs }: Pick<Plan, "crs">): Promise<Crs> =>
  "epsg" in crs ? crsFromEpsg(crs.epsg) : { kind: "local", name: crs.local };
