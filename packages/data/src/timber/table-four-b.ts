import type { LumberGrade } from "@causey/engine/materials";
import { byWidth, tabled } from "./tabled.ts";

const of = tabled("awc-nds-s-4b");
type FiveWidths = readonly [number, number, number, number, number];

function row(
  grade: string,
  name: string,
  fb: FiveWidths,
  fc: FiveWidths,
  e: number,
  emin: number,
): LumberGrade {
  return {
    id: `southern-pine-${grade}`,
    species: "southern-pine",
    grade,
    name: `Southern Pine ${name}`,
    specific_gravity: of(0.55, "seen"),
    size_factor_inside: true,
    fb_psi: byWidth("awc-nds-s-4b", "computed", fb),
    fv_psi: of(175, "computed"),
    fcp_psi: of(565, "memory"),
    fc_psi: byWidth("awc-nds-s-4b", "memory", fc),
    e_psi: of(e, "computed"),
    emin_psi: of(emin, "memory"),
  };
}

/**
 * NDS Supplement 2018, Table 4B, lumber 2 in to 4 in thick, dry, by nominal width 4, 6, 8, 10, 12 in; the size
 * factor is inside. The metric values were seen; each psi value is the one table step that rounds to them.
 */
export const tableFourB = [
  row(
    "ss",
    "Select Structural",
    [2350, 2100, 1950, 1700, 1600],
    [1900, 1800, 1700, 1650, 1650],
    1.8e6,
    660e3,
  ),
  row("no1", "No.1", [1500, 1350, 1250, 1050, 1000], [1650, 1550, 1500, 1450, 1400], 1.6e6, 580e3),
  row("no2", "No.2", [1100, 1000, 925, 800, 750], [1450, 1400, 1350, 1300, 1250], 1.4e6, 510e3),
  row("no3", "No.3", [650, 575, 525, 475, 450], [850, 800, 775, 750, 725], 1.3e6, 470e3),
] as const satisfies readonly LumberGrade[];
