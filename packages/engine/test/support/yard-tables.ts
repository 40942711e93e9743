import type { Tables } from "../../src/materials/index.ts";

/** Actual sizes in inches as public lumber size charts print them (PS 20, dressed dry): thickness, width. */
const actual = {
  "2x2": [1.5, 1.5],
  "2x4": [1.5, 3.5],
  "2x6": [1.5, 5.5],
  "2x8": [1.5, 7.25],
  "2x10": [1.5, 9.25],
  "2x12": [1.5, 11.25],
  "4x4": [3.5, 3.5],
  "5/4x6": [1, 5.5],
} as const;

const nominal = (id: string): [number, number] => {
  const [thick, wide] = id.split("x") as [string, string];
  return [thick === "5/4" ? 1.25 : Number(thick), Number(wide)];
};

const status = "seen";
const source = "ps-20";
const tabled = (value: number) => ({ value, source, status: "memory" }) as const;
const screw = (id: string, length_mm: number, diameter_mm: number) =>
  ({
    id,
    name: `Wood screw ${id}`,
    kind: "wood-screw",
    length_mm,
    diameter_mm,
    coating: "hot-dip-zinc",
    source,
    status,
  }) as const;

/** A small yard for tests of kits, take-off and money: the sizes above, screws, clips, crew rates. */
export const yardTables: Tables = {
  version: "test",
  sources: {},
  grades: [
    {
      id: "southern-pine-no2",
      species: "southern-pine",
      grade: "no2",
      name: "Southern Pine No. 2",
      specific_gravity: tabled(0.55),
      size_factor_inside: true,
      fb_psi: {},
      fv_psi: tabled(175),
      fcp_psi: tabled(565),
      fc_psi: {},
      e_psi: tabled(1_400_000),
      emin_psi: tabled(510_000),
    },
  ],
  strength_classes: [],
  sizes: Object.entries(actual).map(([id, [thickness_in, width_in]]) => ({
    id,
    thickness_in,
    width_in,
    nominal_thickness_in: nominal(id)[0],
    nominal_width_in: nominal(id)[1],
    source,
    status,
  })),
  fasteners: [
    screw("screw-10x3", 76.2, 4.826),
    screw("screw-8x2.5", 63.5, 4.1656),
    {
      id: "mesh-clip",
      name: "Mesh clip",
      kind: "clip",
      length_mm: 25,
      diameter_mm: 4,
      coating: "hot-dip-zinc",
      source,
      status,
    },
  ],
  holes: [],
  load_rules: [],
  used_timber: [],
  wires: [],
  meshes: [],
  bar_gratings: [],
  plywood: [],
  preservatives: [
    {
      id: "ca-c",
      name: "Copper azole",
      has_copper: true,
      has_arsenic: false,
      salt_use: "marine-retention",
      restricted: false,
      note: "",
      source,
      status,
    },
    {
      id: "creosote",
      name: "Creosote",
      has_copper: false,
      has_arsenic: false,
      salt_use: "yes",
      restricted: true,
      note: "not for small docks",
      source,
      status,
    },
  ],
  labour: {
    ready_made: { low_ft_per_h: 5, high_ft_per_h: 10, source: "crew-days", status: "computed" },
    long_carry: { low_ft_per_h: 0.3, high_ft_per_h: 1, source: "crew-days", status: "computed" },
    short_carry_m: { value: 150, source: "crew-days", status: "project" },
    long_carry_m: { value: 1200, source: "crew-days", status: "project" },
  },
  rule_profiles: [],
  drag_coefficients: [],
  ground: { terrains: [], muskegs: [], compressible: [] },
};
