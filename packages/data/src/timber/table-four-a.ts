import type { Source } from "@causey/engine/formula";
import type { LumberGrade } from "@causey/engine/materials";
import { tabled } from "./tabled.ts";

const of = tabled("awc-nds-s-4a");
type Status = Source["status"];

/** fb, fv, fcp, fc, E, Emin in psi, before the size factor. */
type Values = readonly [fb: number, fv: number, fcp: number, fc: number, e: number, emin: number];

function row(
  species: string,
  grade: string,
  name: string,
  gravity: readonly [number, Status],
  status: Status,
  [fb, fv, fcp, fc, e, emin]: Values,
): LumberGrade {
  return {
    id: `${species}-${grade}`,
    species,
    grade,
    name,
    specific_gravity: of(...gravity),
    size_factor_inside: false,
    fb_psi: { all: of(fb, status) },
    fv_psi: of(fv, status),
    fcp_psi: of(fcp, status),
    fc_psi: { all: of(fc, status) },
    e_psi: of(e, status),
    emin_psi: of(emin, status),
  };
}

const dfl = "douglas-fir-larch";
const hf = "hem-fir";
const spf = "spruce-pine-fir";
const wc = "western-cedars";
const ns = "northern-species";

/** NDS Supplement 2018, Table 4A, lumber 2 in to 4 in thick, dry. SPF Select Structural: decision record 0003. */
export const tableFourA = [
  row(
    dfl,
    "ss",
    "Douglas Fir-Larch Select Structural",
    [0.5, "seen"],
    "seen",
    [1500, 180, 625, 1700, 1.9e6, 690e3],
  ),
  row(dfl, "no1", "Douglas Fir-Larch No.1", [0.5, "seen"], "seen", [1000, 180, 625, 1500, 1.7e6, 620e3]),
  row(dfl, "no2", "Douglas Fir-Larch No.2", [0.5, "seen"], "seen", [900, 180, 625, 1350, 1.6e6, 580e3]),
  row(dfl, "no3", "Douglas Fir-Larch No.3", [0.5, "seen"], "seen", [525, 180, 625, 775, 1.4e6, 510e3]),
  row(hf, "ss", "Hem-Fir Select Structural", [0.43, "seen"], "seen", [1400, 150, 405, 1500, 1.6e6, 580e3]),
  row(hf, "no1", "Hem-Fir No.1", [0.43, "seen"], "seen", [975, 150, 405, 1350, 1.5e6, 550e3]),
  row(hf, "no2", "Hem-Fir No.2", [0.43, "seen"], "seen", [850, 150, 405, 1300, 1.3e6, 470e3]),
  row(hf, "no3", "Hem-Fir No.3", [0.43, "seen"], "seen", [500, 150, 405, 725, 1.2e6, 440e3]),
  row(
    spf,
    "ss",
    "Spruce-Pine-Fir Select Structural",
    [0.42, "seen"],
    "seen",
    [1150, 135, 425, 1400, 1.5e6, 550e3],
  ),
  row(spf, "no1", "Spruce-Pine-Fir No.1/No.2", [0.42, "seen"], "seen", [875, 135, 425, 1150, 1.4e6, 510e3]),
  row(spf, "no2", "Spruce-Pine-Fir No.1/No.2", [0.42, "seen"], "seen", [875, 135, 425, 1150, 1.4e6, 510e3]),
  row(spf, "no3", "Spruce-Pine-Fir No.3", [0.42, "seen"], "seen", [500, 135, 425, 650, 1.2e6, 440e3]),
  row(
    wc,
    "ss",
    "Western Cedars Select Structural",
    [0.36, "seen"],
    "memory",
    [1000, 155, 425, 1000, 1.1e6, 400e3],
  ),
  row(wc, "no1", "Western Cedars No.1", [0.36, "seen"], "memory", [725, 155, 425, 825, 1.0e6, 370e3]),
  row(wc, "no2", "Western Cedars No.2", [0.36, "seen"], "memory", [700, 155, 425, 650, 1.0e6, 370e3]),
  row(wc, "no3", "Western Cedars No.3", [0.36, "seen"], "memory", [400, 155, 425, 375, 0.9e6, 330e3]),
  row(
    ns,
    "no1",
    "Northern Species No.1/No.2",
    [0.35, "memory"],
    "memory",
    [625, 110, 350, 850, 1.1e6, 400e3],
  ),
  row(
    ns,
    "no2",
    "Northern Species No.1/No.2",
    [0.35, "memory"],
    "memory",
    [625, 110, 350, 850, 1.1e6, 400e3],
  ),
] as const satisfies readonly LumberGrade[];
