import type { Source } from "../formula/index.ts";
import type { GroundTables } from "../ground/index.ts";
import type { RuleProfile } from "../rules/profile.ts";
import type { BarGratingRow, MeshRow, PlywoodRow, WireRow } from "./deck-tables.ts";
import type { LoadRule, UsedTimberGrade } from "./load-tables.ts";

/** A tabulated value with its source. */
export interface Tabled {
  readonly value: number;
  readonly source: string;
  readonly status: Source["status"];
}

/** Reference design values of one species and grade, dry, before any factor, in the code's own units (psi). */
export interface LumberGrade {
  readonly id: string;
  readonly species: string;
  readonly grade: string;
  readonly name: string;
  /** Specific gravity, oven-dry mass over volume. */
  readonly specific_gravity: Tabled;
  /** When size factors are already inside (Southern Pine), bending and compression are listed by size. */
  readonly size_factor_inside: boolean;
  readonly fb_psi: Readonly<Record<string, Tabled>>;
  readonly fv_psi: Tabled;
  readonly fcp_psi: Tabled;
  readonly fc_psi: Readonly<Record<string, Tabled>>;
  readonly e_psi: Tabled;
  readonly emin_psi: Tabled;
}

/** Characteristic values of one strength class (EN 338), before any factor, in the table's own units. */
export interface StrengthClass {
  readonly id: string;
  /** The wood it is graded from, in place of a species: "softwood". */
  readonly species: string;
  /** The class itself: "c24". */
  readonly grade: string;
  readonly name: string;
  readonly fm_k_mpa: Tabled;
  readonly ft0_k_mpa: Tabled;
  readonly fc0_k_mpa: Tabled;
  readonly fc90_k_mpa: Tabled;
  readonly fv_k_mpa: Tabled;
  readonly e0_mean_mpa: Tabled;
  readonly e0_05_mpa: Tabled;
  readonly g_mean_mpa: Tabled;
  readonly rho_k_kg_m3: Tabled;
  readonly rho_mean_kg_m3: Tabled;
}

/** How heavy a wood is, as its own table says it: never one turned into the other without a formula. */
export type WoodDensity =
  | { readonly kind: "oven-dry-gravity"; readonly gravity: Tabled }
  /** Mean density at 12 % moisture. */
  | { readonly kind: "mean-density"; readonly kg_m3: Tabled };

/** Actual size of lumber. The inch fields are exact for every size; a metric size has no nominal inch name. */
export interface LumberSize {
  readonly id: string;
  readonly thickness_in: number;
  readonly width_in: number;
  readonly nominal_thickness_in: number | null;
  readonly nominal_width_in: number | null;
  readonly source: string;
  readonly status: Source["status"];
}

/** What keeps a fastener from rusting. */
export type Coating = "stainless-316" | "stainless-304" | "hot-dip-zinc" | "plain-zinc" | "none";

export interface Fastener {
  readonly id: string;
  readonly name: string;
  readonly kind: "wood-screw" | "clip" | "nail" | "lag-screw";
  readonly length_mm: number;
  /** Shank of nails, nominal diameter of screws. */
  readonly diameter_mm: number;
  readonly coating: Coating;
  /** Nails: smooth when left out. */
  readonly shank?: "smooth" | "ring";
  /** Nails of hardened steel with a thread keep their hold when the wood's moisture changes. */
  readonly hardened?: boolean;
  /** Screws: diameter at the root of the thread. */
  readonly root_mm?: number;
  /** Length of the thread or of the rings, the point included. */
  readonly thread_mm?: number;
  /** Length of the tapered point; two diameters when left out. */
  readonly tip_mm?: number;
  readonly head_mm?: number;
  /** Dowel bending yield strength. */
  readonly fyb_psi?: number;
  /** Tensile strength of the wire, as European standards give it [N/mm2]. */
  readonly fu_mpa?: number;
  readonly source: string;
  readonly status: Source["status"];
}

/** What is left of a fastener's hold when its hole is not new: shares of the capacity in a fresh hole. */
export interface HoleRow {
  readonly id: string;
  readonly name: string;
  readonly lateral: number;
  readonly withdrawal: number;
  readonly source: string;
  readonly status: Source["status"];
}

/** A preservative of treated lumber: what leaches, and where it may stand. */
export interface Preservative {
  readonly id: string;
  readonly name: string;
  readonly has_copper: boolean;
  readonly has_arsenic: boolean;
  /** In or beside salt water: as sold for the ground, only at the higher retention of marine classes, or not at all. */
  readonly salt_use: "yes" | "marine-retention" | "no" | "unknown";
  /** Barred or limited by guidance for small structures in wetlands, or withdrawn from general sale. */
  readonly restricted: boolean;
  readonly note: string;
  readonly source: string;
  readonly status: Source["status"];
}

/** Drag coefficient of a shape in flowing water, on the area that the flow sees. */
export interface DragCoefficient {
  readonly id: string;
  readonly name: string;
  /** Rows of one family are read between by `ratio`; null = the row stands alone. */
  readonly family: "rectangle" | "rod-corner" | "cylinder" | null;
  /** rectangle: length along the flow over height; rod-corner: radius over width; cylinder: length over diameter. */
  readonly ratio: number | null;
  readonly cd: number;
  readonly source: string;
  readonly status: Source["status"];
}

/** Every table the engine reads, handed in: the engine imports none. `version` is a hash over all of them. */
export interface Tables {
  readonly version: string;
  readonly sources: Readonly<Record<string, Source>>;
  readonly grades: readonly LumberGrade[];
  readonly strength_classes: readonly StrengthClass[];
  readonly sizes: readonly LumberSize[];
  readonly fasteners: readonly Fastener[];
  readonly holes: readonly HoleRow[];
  readonly load_rules: readonly LoadRule[];
  readonly used_timber: readonly UsedTimberGrade[];
  readonly wires: readonly WireRow[];
  readonly meshes: readonly MeshRow[];
  readonly bar_gratings: readonly BarGratingRow[];
  readonly plywood: readonly PlywoodRow[];
  readonly preservatives: readonly Preservative[];
  readonly labour: {
    readonly ready_made: {
      readonly low_ft_per_h: number;
      readonly high_ft_per_h: number;
      readonly source: string;
      readonly status: Source["status"];
    };
    readonly long_carry: {
      readonly low_ft_per_h: number;
      readonly high_ft_per_h: number;
      readonly source: string;
      readonly status: Source["status"];
    };
    readonly short_carry_m: Tabled;
    readonly long_carry_m: Tabled;
  };
  readonly rule_profiles: readonly RuleProfile[];
  readonly drag_coefficients: readonly DragCoefficient[];
  readonly ground: GroundTables;
}
