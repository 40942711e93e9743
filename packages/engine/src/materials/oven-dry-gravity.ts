import { recordValue, type Trace } from "../formula/index.ts";
import { gravityFromDensity } from "../structure/index.ts";
import { qty, type Qty } from "../units/index.ts";
import type { Tables, WoodDensity } from "./tables.ts";

/** Moisture at which EN 338 gives its densities, per cent of the oven-dry mass. */
const TABLE_MOISTURE = 12;

/**
 * Specific gravity of a wood on its oven-dry mass and volume [1]: as tabulated, or found back from the mean density at
 * 12 % moisture. `sources` are those of the tables; the working then names where the tabulated value stands.
 */
export function ovenDryGravity(
  density: WoodDensity,
  sources: Tables["sources"] = {},
  trace?: Trace,
): Qty<"1"> {
  if (density.kind === "oven-dry-gravity") return qty(density.gravity.value, "1");
  const { value, source, status } = density.kg_m3;
  const rho = qty(value, "kg/m3");
  recordValue(trace, {
    id: "timber.mean-density",
    title: "Mean density as tabulated, at 12 % moisture",
    symbol: "rho",
    value: rho,
    unit: "kg/m3",
    source: { id: source, title: source, ...sources[source], status },
    how: "as tabulated",
  });
  return gravityFromDensity({ rho, M: qty(TABLE_MOISTURE, "1") }, trace);
}
