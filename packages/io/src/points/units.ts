import { M_PER_FT } from "@causey/engine/units";
import type { PointUnit } from "./types.ts";

/** US survey foot, by definition (Federal Register notice of 1959): 1200/3937 m. */
export const M_PER_US_FT = 1200 / 3937;

export const metresPer: Readonly<Record<PointUnit, number>> = { m: 1, ft: M_PER_FT, "us-ft": M_PER_US_FT };
export const unitWords: Readonly<Record<PointUnit, string>> = {
  m: "metres",
  ft: "international feet",
  "us-ft": "US survey feet",
};
