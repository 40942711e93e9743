import { defineConstant, defineFormula, type Trace } from "../formula/index.ts";
import { densityAtMoisture, densityOfWetWood } from "../structure/index.ts";
import { qty, type Qty } from "../units/index.ts";
import { project, waterlogged } from "./sources.ts";

/** How wet a piece of timber is. "wet" is soaked lumber; "waterlogged" has every cell full. */
export type MoistureState = "dry-12" | "dry-19" | "wet" | "waterlogged";
export const moistureStates: readonly MoistureState[] = ["dry-12", "dry-19", "wet", "waterlogged"];

const memory = { id: "lumber-moisture", title: "Moisture of lumber", status: "memory" } as const;

export const airDryMoisture = defineConstant(
  "flood.moisture.air-dry",
  "Moisture of air-dry wood, per cent",
  "M",
  12,
  "1",
  { ...memory, at: "12 %" },
);
export const dryLumberMoisture = defineConstant(
  "flood.moisture.dry-lumber",
  "Moisture of dry lumber, per cent",
  "M",
  19,
  "1",
  { ...memory, at: "at most 19 %" },
);
export const wetMoisture = defineConstant(
  "flood.moisture.wet",
  "Moisture of soaked lumber, per cent",
  "M",
  75,
  "1",
  {
    id: "jlc-treated-lumber",
    title: "jlconline.com, treated lumber questions and answers",
    at: "75 % or more straight after pressure treatment",
    status: "seen",
  },
);

/** Specific gravity on the green volume. G on the oven-dry volume [1], 0.2 to 0.9; G_b [1]. */
export const basicGravity = defineFormula(
  {
    id: "timber.basic-gravity",
    title: "Specific gravity on the green volume",
    symbol: "G_b",
    unit: "1",
    text: "G / (1 + 0.27 * G)",
    inputs: { G: "1" },
    validity: "G from 0.2 to 0.9; the volume swells up to 30 % moisture.",
    source: waterlogged("volume held at that of 30 % moisture", "computed"),
  },
  ({ G }) => G / (1 + 0.27 * G),
);

/** Moisture of waterlogged wood in per cent of the oven-dry mass. G_b [1] under 1.54; M_max [1]. */
export const waterloggedMoisture = defineFormula(
  {
    id: "timber.moisture.waterlogged",
    title: "Moisture of waterlogged wood, per cent",
    symbol: "M_max",
    unit: "1",
    text: "100 * max(0, 1.54 - G_b) / (1.54 * G_b)",
    inputs: { G_b: "1" },
    validity: "Every cell full of water; G_b between 0.15 and 1.",
    source: waterlogged("100 (1.54 - Gb) / (1.54 Gb)"),
  },
  ({ G_b }) => (100 * Math.max(0, 1.54 - G_b)) / (1.54 * G_b),
);

/** Density of waterlogged wood. G_b [1], M_max [1] in per cent; rho [kg/m3], always over that of fresh water. */
export const waterloggedDensity = defineFormula(
  {
    id: "timber.density.waterlogged",
    title: "Density of waterlogged timber",
    symbol: "rho",
    unit: "kg/m3",
    text: "1000 * G_b * (1 + M_max / 100)",
    inputs: { G_b: "1", M_max: "1" },
    validity: "M_max as found for this G_b.",
    source: waterlogged("1000 Gb (1 + M/100)"),
  },
  ({ G_b, M_max }) => 1000 * G_b * (1 + M_max / 100),
);

/**
 * Density of timber in a moisture state [kg/m3]. G specific gravity on the oven-dry volume [1], 0.2 to 0.9.
 * Soaked lumber never counts as heavier than waterlogged wood, which dense species reach before 75 %.
 */
export function timberDensity(G: Qty<"1">, state: MoistureState, trace?: Trace): Qty<"kg/m3"> {
  if (state === "dry-12") return densityAtMoisture({ G, M: airDryMoisture({}, trace) }, trace);
  if (state === "dry-19") return densityAtMoisture({ G, M: dryLumberMoisture({}, trace) }, trace);
  const G_b = basicGravity({ G }, trace);
  const M_max = waterloggedMoisture({ G_b }, trace);
  if (state === "wet" && wetMoisture({}) < M_max)
    return densityOfWetWood({ G, M: wetMoisture({}, trace) }, trace);
  return waterloggedDensity({ G_b, M_max }, trace);
}

export type Use = "uplift" | "carrying";

export const useRule = project("driest state for uplift, wettest for carrying and bearing");

/** Of the states a piece may be in: the driest for uplift, the wettest for carrying. */
export function stateFor(use: Use, states: readonly [MoistureState, ...MoistureState[]]): MoistureState {
  const ranks = states.map((s) => moistureStates.indexOf(s));
  return moistureStates[use === "uplift" ? Math.min(...ranks) : Math.max(...ranks)]!;
}

const waterSource = (at: string) =>
  ({ id: "water-density", title: "Density of water", at, status: "memory" }) as const;
export const freshWater = defineConstant(
  "flood.water.fresh",
  "Density of fresh water",
  "rho_w",
  1000,
  "kg/m3",
  waterSource("fresh; FEMA P-55 uses 62.4 lb/ft3"),
);
export const brackishWater = defineConstant(
  "flood.water.brackish",
  "Density of brackish water, its upper end",
  "rho_w",
  1020,
  "kg/m3",
  waterSource("1005 to 1020; the upper end lifts most"),
);
export const saltWater = defineConstant(
  "flood.water.salt",
  "Density of salt water",
  "rho_w",
  1025,
  "kg/m3",
  waterSource("sea; FEMA P-55 uses 64.0 lb/ft3"),
);

export type WaterKind = "fresh" | "brackish" | "salt";
const waters = { fresh: freshWater, brackish: brackishWater, salt: saltWater } as const;
/** Density of a kind of water [kg/m3]. */
export const waterDensity = (kind: WaterKind, trace?: Trace): Qty<"kg/m3"> =>
  qty(waters[kind]({}, trace), "kg/m3");

export const woodInWaterFormulas = [
  airDryMoisture,
  dryLumberMoisture,
  wetMoisture,
  basicGravity,
  waterloggedMoisture,
  waterloggedDensity,
  freshWater,
  brackishWater,
  saltWater,
] as const;
