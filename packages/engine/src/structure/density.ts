import { defineFormula } from "../formula/index.ts";
import { woodDensity } from "./sources.ts";

/**
 * Density of wood that holds up to 30 % moisture.
 *
 * G  specific gravity, oven-dry mass and volume [1], 0.2 to 0.9
 * M  moisture in per cent of the oven-dry mass [1], 0 to 30
 * rho [kg/m3]
 */
export const densityAtMoisture = defineFormula(
  {
    id: "timber.density",
    title: "Density of timber at a moisture content",
    symbol: "rho",
    unit: "kg/m3",
    text: "1000 * G * (1 + M / 100) / (1 + 0.009 * G * M)",
    inputs: { G: "1", M: "1" },
    validity: "M from 0 to 30 % of the oven-dry mass; above that the wood swells no more.",
    source: woodDensity,
  },
  ({ G, M }) => (1000 * G * (1 + M / 100)) / (1 + 0.009 * G * M),
);

/**
 * Density of wet wood above 30 % moisture, where water fills cells and the volume stays that of 30 %.
 * G [1], M in per cent [1], 30 to the waterlogged limit; rho [kg/m3].
 */
export const densityOfWetWood = defineFormula(
  {
    id: "timber.density.wet",
    title: "Density of wet timber above 30 % moisture",
    symbol: "rho",
    unit: "kg/m3",
    text: "1000 * G * (1 + M / 100) / (1 + 0.27 * G)",
    inputs: { G: "1", M: "1" },
    validity: "M from 30 % of the oven-dry mass up to the waterlogged limit.",
    source: { ...woodDensity, at: "volume held at that of 30 % moisture", status: "computed" },
  },
  ({ G, M }) => (1000 * G * (1 + M / 100)) / (1 + 0.27 * G),
);

/**
 * Specific gravity found back from a density at a moisture content: `densityAtMoisture` solved for G.
 * rho [kg/m3] with M per cent moisture [1], 0 to 30; G [1] on oven-dry mass and volume.
 */
export const gravityFromDensity = defineFormula(
  {
    id: "timber.gravity-from-density",
    title: "Specific gravity from the density at a moisture content",
    symbol: "G",
    unit: "1",
    text: "rho / (1000 * (1 + M / 100) - 0.009 * rho * M)",
    inputs: { rho: "kg/m3", M: "1" },
    validity: "Sawn timber, rho from 250 to 900 kg/m3, M from 0 to 30 % of the oven-dry mass.",
    source: {
      ...woodDensity,
      at: "rho = 1000 G (1 + M/100) / (1 + 0.009 G M), solved for G",
      status: "computed",
    },
  },
  ({ rho, M }) => rho / (1000 * (1 + M / 100) - 0.009 * rho * M),
);
