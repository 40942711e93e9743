import type { CheckResult, EngineerFlag, Proof, SoilProof } from "../checks/index.ts";
import type { Budget, Cost } from "../cost/index.ts";
import type { CuttingPlan } from "../fabrication/index.ts";
import type { Source, TraceStep } from "../formula/index.ts";
import type { KitFigures } from "../kit-figures/index.ts";
import type { Layout, LayoutFigures, RouteFacts, SettingOut, SpareModules } from "../layout/index.ts";
import type { TakeOff } from "../materials/index.ts";
import type { SurveyResults } from "../survey/index.ts";
import type { OptionLine } from "../options/index.ts";
import type { Unit, UnitSystem } from "../units/index.ts";
import type { WaterResults } from "../water/index.ts";
import type { StripModel } from "./strip.ts";

export const RESULTS_SCHEMA = 1;

/** One number a person reads, with the way it was found. Map, check, order list and paper all show this one value. */
export interface Figure {
  readonly id: string;
  readonly title: string;
  readonly value: number;
  readonly unit: Unit;
  readonly note: string;
  /** Said beside the value wherever it stands: why it is not the whole. Left out when it is. */
  readonly incomplete?: string;
  readonly working: readonly TraceStep[];
  readonly sources: readonly Source[];
}

export interface StageRecord {
  readonly stage: string;
  /** SHA-256 over the stage's inputs, its code version and the tables it read. */
  readonly key: string;
}

/** What `derive` makes of a plan and its files. The same input gives the same bytes. */
export interface Results {
  readonly schema: typeof RESULTS_SCHEMA;
  readonly causey: string;
  readonly plan: { readonly id: string; readonly name: string; readonly units: UnitSystem };
  readonly crs: string;
  readonly datum: string;
  readonly layout: Layout;
  readonly evaluation: LayoutFigures;
  readonly checks: readonly CheckResult[];
  /** What stands behind the checks: modules as structures, the ground along the walkway. */
  readonly proof: Omit<Proof, "checks" | "soil"> & { readonly soil: SoilProof | null };
  readonly take_off: TakeOff;
  readonly cutting: readonly { readonly size: string; readonly plan: CuttingPlan }[];
  readonly cost: Cost;
  /** Spare modules; they are in the take-off, the cutting plan and the order. */
  readonly spares: readonly SpareModules[];
  /** Parcels, water, sensitive ground, dead ends: what permit papers ask of the route. */
  readonly route: RouteFacts;
  /** How a crew with tapes sets the walkway out. */
  readonly setting_out: SettingOut;
  /** Every kind of walkway, "no structure" first, with what was decided and what this place says. */
  readonly options: readonly OptionLine[];
  /** Where the chosen rules and another profile ask for things that cannot both be had. */
  readonly clashes: readonly string[];
  /** Limits beyond which a licensed engineer must look. */
  readonly engineer: readonly EngineerFlag[];
  readonly budget: Budget;
  readonly water: WaterResults;
  /** Every part of the recipe in figures. */
  readonly kit: KitFigures;
  readonly survey: SurveyResults;
  readonly figures: readonly Figure[];
  readonly strip: StripModel;
  readonly cautions: readonly string[];
  readonly stages: readonly StageRecord[];
}
