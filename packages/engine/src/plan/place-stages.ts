import { hashSeries, wetness, type WaterResults } from "../water/index.ts";
import type { Job } from "../formula/index.ts";
import { lowestOnWay, type Layout } from "../layout/index.ts";
import { optionLines, type OptionLine } from "../options/index.ts";
import type { Site } from "../site/index.ts";
import { surveyResults, type SurveyResults } from "../survey/index.ts";
import type { Plan } from "./document.ts";
import { atOnce, type Stages } from "./stages.ts";
import { visitClosureCautions } from "./visit-closures.ts";

interface OnSite {
  readonly plan: Plan;
  readonly site: Site;
}
interface InPlace extends OnSite {
  readonly layout: Layout;
}

/** Stage "options": what else could be done, and what this place says about it. */
export function* optionStage({ plan, site, layout }: InPlace, stages: Stages): Job<readonly OptionLine[]> {
  const inputs = [
    stages.keyOf("layout"),
    plan.request,
    plan.visits,
    plan.ground,
    plan.survey,
    plan.kit,
    site.levels,
    plan.flood_level,
  ];
  return yield* stages.run<readonly OptionLine[]>("options", 1, inputs, () =>
    atOnce(() => optionLines(plan, site, layout)),
  );
}

const seriesKey = (series: Site["series"]): string | null => (series === null ? null : hashSeries(series));

/** Joints with the lowest ground on the way to each. */
const withWays = (layout: Layout) => {
  const ways = lowestOnWay(layout);
  return layout.joints.map((j) => ({ ...j, way_m: ways.get(j.id)! }));
};

/** Stage "water": hours wet of ground and deck, and the days on which joints are dry. */
export function* waterStage({ plan, site, layout }: InPlace, stages: Stages): Job<WaterResults> {
  const laying = { from: plan.laying.from, to: plan.laying.to };
  const { levels, series, height_band_m, datum } = site;
  const compare = site.compare ?? null;
  return yield* stages.run<WaterResults>(
    "water",
    3,
    [stages.keyOf("layout"), levels, seriesKey(series), seriesKey(compare), height_band_m, datum, laying],
    () =>
      atOnce(() =>
        wetness({ levels, series, compare, laying, joints: withWays(layout), height_band_m, datum }),
      ),
  );
}

/** Stage "closures": visits that fall into a closure beside the walkway, each said once. */
export function* closureStage(
  { plan, site, layout }: InPlace,
  siteKey: string,
  stages: Stages,
): Job<readonly string[]> {
  const { visits, units } = plan;
  const out = plan.removal.by;
  return yield* stages.run<readonly string[]>(
    "closures",
    1,
    [stages.keyOf("layout"), siteKey, visits, out, units],
    () => atOnce(() => visitClosureCautions({ visits, zones: site.zones, layout, out, units })),
  );
}

/** Stage "survey": how far the survey can be trusted. */
export function* surveyStage({ plan, site }: OnSite, stages: Stages): Job<SurveyResults> {
  const input = {
    survey: plan.survey,
    zones: site.zones,
    datum: site.datum,
    readings: site.readings,
    ground: site.ground,
    band_m: site.height_band_m,
  };
  return yield* stages.run<SurveyResults>("survey", 1, input, () => atOnce(() => surveyResults(input)));
}
