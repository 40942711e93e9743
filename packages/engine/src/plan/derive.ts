import { engineerFlags, prove, soilWorth, type Proof, type SoilWorth } from "../checks/index.ts";
import type { Solver } from "../fabrication/index.ts";
import { hashJson, type Job } from "../formula/index.ts";
import { kitFigures, type KitFigures } from "../kit-figures/index.ts";
import {
  measureLayout,
  routeFacts,
  settingOut,
  spareModules,
  weighLayout,
  type LayoutMeasures,
  type RouteFacts,
  type SettingOut,
} from "../layout/index.ts";
import { moduleMasses, takeOff, type Price, type Tables, type TakeOff } from "../materials/index.ts";
import { resolveRules } from "../rules/index.ts";
import { hashRaster, type Site } from "../site/index.ts";
import { planCautions } from "./cautions.ts";
import { deckLevelCautions, deckLevelFigures } from "./deck-levels.ts";
import { layoutFacts, searchCosts } from "./derive-layout.ts";
import type { Plan } from "./document.ts";
import { makeFigures } from "./figures.ts";
import { layoutStages, walkwayLength } from "./layout-stages.ts";
import { makeStrip } from "./make-strip.ts";
import { moneyStages } from "./money-stages.ts";
import { closureStage, optionStage, surveyStage, waterStage } from "./place-stages.ts";
import { RESULTS_SCHEMA, type Results } from "./results.ts";
import { ruledChoice } from "./ruled-choice.ts";
import { Stages, atOnce, type StageCache } from "./stages.ts";

export const CAUSEY_VERSION = "0.1.0";

export interface DeriveInput {
  readonly plan: Plan;
  readonly site: Site;
  readonly prices: readonly Price[];
}

export interface DeriveContext {
  readonly tables: Tables;
  readonly solver: Solver;
  /** Stages of earlier derivations; what did not change is not computed again. */
  readonly cache?: StageCache;
}

/**
 * The whole pipeline: site -> layout -> take-off -> cutting plan -> order and cost -> evaluation -> checks -> figures
 * and strip. Pure: the same input gives the same results. Yields progress; long stages are the search and the cutting.
 * The input must have passed the readers' cross checks; a kit that `validateKit` refuses throws `DomainError`.
 */
export function* derive(input: DeriveInput, context: DeriveContext): Job<Results> {
  const { plan, site, prices } = input;
  const { tables } = context;
  const stages = new Stages(context.cache ?? new Map(), tables.version);
  const siteKey = hashJson([
    site.crs,
    site.datum,
    hashRaster(site.terrain),
    site.zones,
    site.starts,
    site.plots,
  ]);
  const facts = layoutFacts(plan.kit, tables.sizes);
  const costs = searchCosts(plan, prices, tables);
  const ruled = ruledChoice(plan, tables);
  const layout = yield* layoutStages({ plan, site, siteKey, facts, costs, ruled }, stages, context.cache);
  const spares = spareModules(layout, plan.kit.spares_share);
  const off = yield* stages.run<TakeOff>("take-off", 2, [stages.keyOf("ramps"), plan.kit], () =>
    atOnce(() => takeOff(plan.kit, { ...layout, spares }, tables.sizes, tables.fasteners)),
  );
  const route = yield* stages.run<RouteFacts>("route", 2, [stages.keyOf("layout"), siteKey, facts], () =>
    atOnce(() => routeFacts(layout, site, facts)),
  );
  const setting_out = yield* stages.run<SettingOut>(
    "setting-out",
    1,
    [stages.keyOf("layout"), plan.survey.benchmarks],
    () => atOnce(() => settingOut(layout, plan.survey.benchmarks)),
  );
  const length_m = walkwayLength(layout, facts.gap_m);
  const { cutting, priced, budgeted } = yield* moneyStages(
    { plan, prices, tables, layout, spares, off, length_m },
    context.solver,
    stages,
  );
  const { cost } = priced;
  const measures = yield* stages.run<LayoutMeasures>("measures", 1, [stages.keyOf("layout"), siteKey], () =>
    atOnce(() => measureLayout({ layout, site, depth_m: facts.depth_m, gap_m: facts.gap_m })),
  );
  const evaluation = weighLayout(measures, plan.layout.weights, cost.total);
  const checkInputs = [
    stages.keyOf("layout"),
    plan.kit,
    plan.visits,
    plan.ground,
    plan.proof,
    plan.flood_level,
    site.levels,
    site.readings,
    plan.water_kg_m3,
    plan.code,
    plan.units,
    plan.levels,
    plan.laying,
    plan.removal,
    site.datum,
    plan.rules,
    plan.water.exposure,
    plan.layout.slop_mm,
    plan.layout.min_clear_mm,
    plan.laying.from,
    plan.removal.by,
    plan.plots,
  ];
  const proveInput = { plan, site, layout, tables, masses: moduleMasses(plan.kit, tables.sizes) };
  const { checks, soil, ...proof } = yield* stages.run<Proof>("checks", 6, checkInputs, () =>
    atOnce(() => prove(proveInput)),
  );
  const worth = yield* stages.run<readonly SoilWorth[]>("reading-worth", 1, [stages.keyOf("checks")], () =>
    atOnce(() => soilWorth(proveInput)),
  );
  const options = yield* optionStage({ plan, site, layout }, stages);
  const { clashes } = resolveRules(plan.rules, tables.rule_profiles, plan.units);
  const water = yield* waterStage({ plan, site, layout }, stages);
  const deckLevels = {
    layout,
    gap_m: facts.gap_m,
    levels: site.levels,
    datum: site.datum,
    units: plan.units,
    wet_feet_ok: plan.request.wet_feet_ok,
  };
  const closures = yield* closureStage({ plan, site, layout }, siteKey, stages);
  const survey = yield* surveyStage({ plan, site }, stages);
  const kit = yield* stages.run<KitFigures>("kit", 1, [plan.kit, prices, plan.laying.carriers], () =>
    atOnce(() => kitFigures(plan.kit, tables, prices, plan.laying.carriers)),
  );
  return {
    schema: RESULTS_SCHEMA,
    causey: CAUSEY_VERSION,
    plan: { id: plan.id, name: plan.name, units: plan.units },
    crs: site.crs.kind === "epsg" ? `EPSG:${site.crs.code} ${site.crs.name}` : site.crs.name,
    datum: site.datum,
    layout,
    evaluation,
    checks,
    proof: { ...proof, soil: soil && { ...soil, worth } },
    take_off: off,
    cutting,
    cost,
    spares,
    route,
    setting_out,
    options,
    clashes: clashes.map((c) => c.message),
    engineer: engineerFlags(plan, layout, checks, tables.rule_profiles),
    budget: budgeted.budget,
    water,
    kit,
    survey,
    figures: [
      ...makeFigures({
        layout,
        evaluation,
        ...priced,
        facts,
        units: plan.units,
        weights: plan.layout.weights,
        budget: budgeted,
      }),
      ...deckLevelFigures(deckLevels),
    ],
    strip: makeStrip(layout, checks, site, facts.gap_m),
    cautions: planCautions({ plan, checks, cost, deck: deckLevelCautions(deckLevels), visits: closures }),
    stages: stages.records,
  };
}
