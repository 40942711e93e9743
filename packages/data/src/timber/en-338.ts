import type { Source } from "@causey/engine/formula";
import type { StrengthClass } from "@causey/engine/materials";
import { tabled } from "./tabled.ts";

const of = tabled("en-338");

/** fm, ft0, fc0, fc90, fv [N/mm2]; E0,mean, E0,05, Gmean [kN/mm2]; rho_k, rho_mean [kg/m3]: the table's own columns. */
type Values = readonly [
  fm: number,
  ft0: number,
  fc0: number,
  fc90: number,
  fv: number,
  e_mean: number,
  e_05: number,
  g_mean: number,
  rho_k: number,
  rho_mean: number,
];

/** `fv_status`: the older edition was seen, its newer shear strengths mostly are from memory. */
function row(
  grade: string,
  [fm, ft0, fc0, fc90, fv, e_mean, e_05, g_mean, rho_k, rho_mean]: Values,
  status: Source["status"] = "seen",
  fv_status: Source["status"] = "memory",
): StrengthClass {
  return {
    id: `softwood-${grade}`,
    species: "softwood",
    grade,
    name: `Softwood, strength class ${grade.toUpperCase()}`,
    fm_k_mpa: of(fm, status),
    ft0_k_mpa: of(ft0, status),
    fc0_k_mpa: of(fc0, status),
    fc90_k_mpa: of(fc90, status),
    fv_k_mpa: of(fv, fv_status),
    e0_mean_mpa: of(e_mean * 1000, status),
    e0_05_mpa: of(e_05 * 1000, status),
    g_mean_mpa: of(g_mean * 1000, status),
    rho_k_kg_m3: of(rho_k, status),
    rho_mean_kg_m3: of(rho_mean, status),
  };
}

/** EN 338 (2009 and later), softwood classes that yards sell or that a grader may name. */
export const en338 = [
  row("c14", [14, 8, 16, 2.0, 3.0, 7.0, 4.7, 0.44, 290, 350]),
  row("c16", [16, 10, 17, 2.2, 3.2, 8.0, 5.4, 0.5, 310, 370]),
  row("c18", [18, 11, 18, 2.2, 3.4, 9.0, 6.0, 0.56, 320, 380]),
  row("c20", [20, 12, 19, 2.3, 3.6, 9.5, 6.4, 0.59, 330, 390], "memory"),
  row("c22", [22, 13, 20, 2.4, 3.8, 10.0, 6.7, 0.63, 340, 410]),
  row("c24", [24, 14, 21, 2.5, 4.0, 11.0, 7.4, 0.69, 350, 420], "seen", "seen"),
  row("c27", [27, 16, 22, 2.6, 4.0, 11.5, 7.7, 0.72, 370, 450]),
  row("c30", [30, 18, 23, 2.7, 4.0, 12.0, 8.0, 0.75, 380, 460]),
] as const satisfies readonly StrengthClass[];
