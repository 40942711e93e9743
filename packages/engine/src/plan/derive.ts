import { engineerFlags, runChecks, type CheckResult } from "../checks/index.ts";
import { budgetOf, costOf, type Budget, type Cost } from "../cost/index.ts";
import { planCutting, type CuttingPlan, type Solver } from "../fabrication/index.ts";
import { hashJson, type Job, type Trace } from "../formula/index.ts";
import { kitFigures, type KitFigures } from "../kit-figures/index.ts";
import { labourHours } from "../laying/index.ts";
import {
  SearchMemory,
  entryRamps,
  lowestOnWay,
  measureLayout,
  routeFacts,
  searchLayout,
  settingOut,
  spareModules,
  weighLayout,
  type Layout,
  type LayoutMeasures,
  type RouteFacts,
  type SettingOut,
  type SpareModules,
} from "../layout/index.ts";
import {
  cuttingProblems,
  moduleMasses,
  orderList,
  takeOff,
  type Price,
  type Tables,
  type TakeOff,
} from "../materials/index.ts";
import { optionLines, type OptionLine } from "../options/index.ts";
import { resolveRules } from "../rules/index.ts";
import { hashRaster, type Site } from "../site/index.ts";
import { surveyResults, type SurveyResults } from "../survey/index.ts";
import { hashSeries, wetness, type WaterResults } from "../water/index.ts";
import { planCautions } from "./cautions.ts";
import { deckLevelCautions, deckLevelFigures } from "./deck-levels.ts";
import { layoutFacts, searchCosts } from "./derive-layout.ts";
import type { Plan } from "./document.ts";
import { makeFigures } from "./figures.ts";
import { makeStrip } from "./make-strip.ts";
import { ruledChoice } from "./ruled-choice.ts";
import { RESULTS_SCHEMA, type Results } from "./results.ts";
import { Stages, atOnce, type StageCache } from "./stages.ts";
import { visitClosureCautions } from "./visit-closures.ts";

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
  const cache: StageCache = context.cache ?? new Map();
  const stages = new Stages(cache, tables.version);
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
  const search = {
    site,
    choice: ruled.choice,
    laying: { from: plan.laying.from, to: plan.laying.to },
    facts,
    costs,
  };
  const found = yield* stages.run<Layout>(
    "layout",
    3,
    [siteKey, search.choice, search.laying, facts, costs],
    () => searchLayout(search, memoryIn(cache, context.cache === undefined ? 0 : SEARCH_MEMORY_BYTES)),
  );
  const layout = yield* stages.run<Layout>(
    "ramps",
    2,
    [stages.keyOf("layout"), plan.kit.ramp, ruled.notes],
    () =>
      atOnce(() => ({
        ...found,
        notes: [...found.notes, ...ruled.notes],
        ramps: entryRamps({ layout: found, site, facts, laying: plan.laying, ramp: plan.kit.ramp }),
      })),
  );
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
  const cutting = yield* cutAll(off, prices, plan, context.solver, stages);
  const priced = yield* stages.run<Priced>(
    "cost",
    3,
    [stages.keyOf("take-off"), prices, plan.saw, plan.money, plan.laying.carry_m],
    () => atOnce(() => priceAll(off, cutting, prices, plan, walkwayLength(layout, facts.gap_m), tables)),
  );
  const { cost } = priced;
  const money = yield* stages.run<Budgeted>(
    "budget",
    2,
    [stages.keyOf("cost"), plan.money, plan.laying, plan.removal, plan.visits, plan.papers.date, prices],
    () => atOnce(() => budgetAll(plan, layout, spares, cost, prices, walkwayLength(layout, facts.gap_m))),
  );
  const measures = yield* stages.run<LayoutMeasures>("measures", 1, [stages.keyOf("layout"), siteKey], () =>
    atOnce(() => measureLayout({ layout, site, depth_m: facts.depth_m, gap_m: facts.gap_m })),
  );
  const evaluation = weighLayout(measures, plan.layout.weights, cost.total);
  const checkInputs = [
    stages.keyOf("layout"),
    plan.kit,
    plan.visits,
    plan.ground,
    plan.flood_level,
    site.levels,
    site.readings,
    plan.water_kg_m3,
    plan.code,
    plan.units,
    plan.laying.carriers,
    site.datum,
    plan.rules,
    plan.water.exposure,
    plan.layout.slop_mm,
  ];
  const checks = yield* stages.run<readonly CheckResult[]>("checks", 4, checkInputs, () =>
    atOnce(() => runChecks({ plan, site, layout, tables, masses: moduleMasses(plan.kit, tables.sizes) })),
  );
  const options = yield* stages.run<readonly OptionLine[]>(
    "options",
    1,
    [
      stages.keyOf("layout"),
      plan.request,
      plan.visits,
      plan.ground,
      plan.survey,
      plan.kit,
      site.levels,
      plan.flood_level,
    ],
    () => atOnce(() => optionLines(plan, site, layout)),
  );
  const { clashes } = resolveRules(plan.rules, tables.rule_profiles, plan.units);
  const water = yield* stages.run<WaterResults>(
    "water",
    3,
    [
      stages.keyOf("layout"),
      site.levels,
      seriesKey(site.series),
      seriesKey(site.compare ?? null),
      site.height_band_m,
      site.datum,
      { from: plan.laying.from, to: plan.laying.to },
    ],
    () =>
      atOnce(() =>
        wetness({
          levels: site.levels,
          series: site.series,
          compare: site.compare ?? null,
          laying: { from: plan.laying.from, to: plan.laying.to },
          joints: withWays(layout),
          height_band_m: site.height_band_m,
          datum: site.datum,
        }),
      ),
  );
  const deckLevels = {
    layout,
    gap_m: facts.gap_m,
    levels: site.levels,
    datum: site.datum,
    units: plan.units,
  };
  const closures = yield* stages.run<readonly string[]>(
    "closures",
    1,
    [stages.keyOf("layout"), siteKey, plan.visits, plan.removal.by, plan.units],
    () =>
      atOnce(() =>
        visitClosureCautions({
          visits: plan.visits,
          zones: site.zones,
          layout,
          out: plan.removal.by,
          units: plan.units,
        }),
      ),
  );
  const surveyInput = {
    survey: plan.survey,
    zones: site.zones,
    datum: site.datum,
    readings: site.readings,
    ground: site.ground,
    band_m: site.height_band_m,
  };
  const survey = yield* stages.run<SurveyResults>("survey", 1, surveyInput, () =>
    atOnce(() => surveyResults(surveyInput)),
  );
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
    take_off: off,
    cutting,
    cost,
    spares,
    route,
    setting_out,
    options,
    clashes: clashes.map((c) => c.message),
    engineer: engineerFlags(plan, layout, checks, tables.rule_profiles),
    budget: money.budget,
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
        budget: money,
      }),
      ...deckLevelFigures(deckLevels),
    ],
    strip: makeStrip(layout, checks, site, facts.gap_m),
    cautions: planCautions({ plan, checks, cost, deck: deckLevelCautions(deckLevels), visits: closures }),
    stages: stages.records,
  };
}

/** What the layout search keeps from one derivation to the next [bytes]. */
const SEARCH_MEMORY_BYTES = 512e6;

/** The search's own memory travels with the stages: it outlives a stage whose inputs have changed. */
function memoryIn(cache: StageCache, most_bytes: number): SearchMemory {
  const kept = cache.get("search-memory")?.value;
  if (kept instanceof SearchMemory) return kept;
  const memory = new SearchMemory(most_bytes);
  cache.set("search-memory", { key: "", value: memory });
  return memory;
}

/** Joints with the lowest ground on the way to each. */
const withWays = (layout: Layout) => {
  const ways = lowestOnWay(layout);
  return layout.joints.map((j) => ({ ...j, way_m: ways.get(j.id)! }));
};

const seriesKey = (series: Site["series"]): string | null => (series === null ? null : hashSeries(series));

interface Priced {
  readonly cost: Cost;
  /** Working of hours and shares, for the cost's figure. */
  readonly working: Trace;
}
/** A budget with its working. */
export interface Budgeted {
  readonly budget: Budget;
  readonly working: Trace;
}
type SizeCut = { readonly size: string; readonly plan: CuttingPlan };

/** One stage a size: a change that asks for the same pieces of a size keeps its plan. */
function* cutAll(
  off: TakeOff,
  prices: readonly Price[],
  plan: Plan,
  solver: Solver,
  stages: Stages,
): Job<readonly SizeCut[]> {
  const plans: SizeCut[] = [];
  for (const { size, problem } of cuttingProblems(off, prices, plan.saw.kerf_mm).problems) {
    const work = (): Job<CuttingPlan> => planCutting(problem, solver);
    plans.push({ size, plan: yield* stages.run<CuttingPlan>(`cutting ${size}`, 1, problem, work) });
  }
  return plans;
}

function priceAll(
  off: TakeOff,
  cutting: readonly SizeCut[],
  prices: readonly Price[],
  plan: Plan,
  length_m: number,
  tables: Tables,
): Priced {
  const working: Trace = [];
  const { order, unpriced } = orderList(off, cutting, prices);
  const terms = { length_m, carry_m: plan.laying.carry_m, removal_share: plan.money.removal_share };
  const labour = labourHours(terms, tables.labour, working);
  return { cost: costOf(plan, order, unpriced, labour, working), working };
}

function budgetAll(
  plan: Plan,
  layout: Layout,
  spares: readonly SpareModules[],
  cost: Cost,
  prices: readonly Price[],
  length_m: number,
): Budgeted {
  const working: Trace = [];
  const { money, laying, removal, visits, papers } = plan;
  const budget = budgetOf(
    {
      money,
      cost,
      built: layout.parts.length + spares.reduce((sum, s) => sum + s.spares, 0),
      length_m,
      laying,
      out: removal.by,
      visits,
      prices,
      on: papers.date ?? laying.from,
    },
    working,
  );
  return { budget, working };
}

const walkwayLength = (layout: Layout, gap: number): number =>
  layout.parts.reduce((sum, p) => sum + (p.kind === "module" ? p.length_m : p.side_m) + gap, 0);
