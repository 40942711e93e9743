import type { MuskegSinkage, TerrainSinkage } from "@causey/engine/ground";

const terrain = (
  id: string,
  name: string,
  [n, kc_kn, kphi_kn, cohesion_kpa, friction_deg]: readonly [number, number, number, number, number],
): TerrainSinkage => ({
  id,
  name,
  n,
  kc_kn,
  kphi_kn,
  cohesion_kpa,
  friction_deg,
  source: "wong-2008",
  status: "seen",
});

/** Values for p = (kc / b + kphi) z^n as printed: kPa and metres. None is of salt marsh or fen: no such row was found. */
export const terrains: readonly TerrainSinkage[] = [
  terrain("dry-sand", "Dry sand (LLL)", [1.1, 0.99, 1528.43, 1.04, 28]),
  terrain("sandy-loam-15", "Sandy loam, 15 % water (LLL)", [0.7, 5.27, 1515.04, 1.72, 29]),
  terrain("sandy-loam-22", "Sandy loam, 22 % water (LLL)", [0.2, 2.56, 43.12, 1.38, 38]),
  terrain("sandy-loam-26", "Sandy loam, 26 % water (Hanamoto)", [0.3, 2.79, 141.11, 13.79, 22]),
  terrain("sandy-loam-32", "Sandy loam, 32 % water (Hanamoto)", [0.5, 0.77, 51.91, 5.17, 11]),
  terrain("clayey-soil-38", "Clayey soil, 38 % water (Thailand)", [0.5, 13.19, 692.15, 4.14, 13]),
  terrain("clayey-soil-55", "Clayey soil, 55 % water (Thailand)", [0.7, 16.03, 1262.53, 2.07, 10]),
  terrain("heavy-clay-25", "Heavy clay, 25 % water", [0.13, 12.7, 1555.95, 68.95, 34]),
  terrain("heavy-clay-40", "Heavy clay, 40 % water", [0.11, 1.84, 103.27, 20.69, 6]),
  terrain("lean-clay-22", "Lean clay, 22 % water", [0.2, 16.43, 1724.69, 68.95, 20]),
  terrain("lean-clay-32", "Lean clay, 32 % water", [0.15, 1.52, 119.61, 13.79, 11]),
  terrain("lete-sand", "LETE sand", [0.79, 102, 5301, 1.3, 31.1]),
  terrain("rubicon-sandy-loam-43", "Rubicon sandy loam, 43 % water", [0.66, 6.9, 752, 3.7, 29.8]),
  terrain("snow-us", "Snow, US", [1.6, 4.37, 196.72, 1.03, 19.7]),
  terrain("snow-harrison", "Snow, Harrison", [1.6, 2.49, 245.9, 0.62, 23.2]),
  terrain("snow-sweden", "Snow, Sweden", [1.44, 10.55, 66.08, 6, 20.7]),
];

/** Muskeg with a living mat: p = kp z + 4 mm z^2 / Dh. From memory. */
export const muskegs: readonly MuskegSinkage[] = [
  {
    id: "petawawa-a",
    name: "Petawawa A",
    kp_kn_m3: 290,
    mm_kn_m3: 51,
    source: "wong-muskeg",
    status: "memory",
  },
  {
    id: "petawawa-b",
    name: "Petawawa B",
    kp_kn_m3: 762,
    mm_kn_m3: 97,
    source: "wong-muskeg",
    status: "memory",
  },
];
