import type { DesignCode } from "../codes/index.ts";
import type { SupportKind } from "../kit/index.ts";
import type { Layout } from "../layout/index.ts";
import type { HoleRow, LoadRule, Tables, UsedTimberGrade } from "../materials/index.ts";
import type { Plan } from "../plan/document.ts";
import type { Site } from "../site/index.ts";
import type { UnitSystem } from "../units/index.ts";

/** Timber of a part by volume, since its density follows its moisture; the rest by mass. */
export interface PartMass {
  readonly timber_m3: number;
  readonly other_kg: number;
  /** Water that panels take up when soaked; none when left out. */
  readonly soak_kg?: number;
  /** What of `other_kg` has a known volume (panels, floats), and that volume; the rest counts as steel. */
  readonly bulk_kg?: number;
  readonly bulk_m3?: number;
}

/** Where the checks learn what parts weigh: from the pieces of the kit. */
export interface MassModel {
  readonly module: (length_m: number) => PartMass;
  readonly platform: PartMass;
  /** What of a platform is carried by itself, right half first; left out or one long for a whole platform. */
  readonly platform_parts?: readonly PartMass[];
  readonly support: (kind: SupportKind | string, height_m: number) => PartMass;
}

export interface ChecksInput {
  readonly plan: Plan;
  readonly site: Site;
  readonly layout: Layout;
  readonly tables: Tables;
  readonly masses: MassModel;
}

/** What every single check needs besides its own inputs. */
export interface CheckContext {
  readonly tables: Tables;
  readonly code: DesignCode;
  /** For the words of the answer only; the numbers stay SI. */
  readonly units: UnitSystem;
  /** Load rules that must hold as well as the visits; none when left out. */
  readonly load_rules?: readonly LoadRule[];
  /** Timber that has lain out before; new when left out. `code` then gives what is left of its members. */
  readonly used?: UsedState;
}

/** How used timber is taken: its grade, how often it was laid, and what its screw holes hold. */
export interface UsedState {
  readonly grade: UsedTimberGrade;
  readonly cycles: number;
  readonly hole: HoleRow;
}

/** Species, grade and treatment of the kit. */
export interface GradedLumber {
  readonly species: string;
  readonly grade: string;
  readonly incised: boolean;
}
