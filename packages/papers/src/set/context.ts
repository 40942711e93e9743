import type { Tables } from "@causey/engine/materials";
import type { Plan, Results } from "@causey/engine/plan";
import type { Site, Zone } from "@causey/engine/site";

/** Everything that the papers are drawn from. What is hidden has been taken out: no sheet can show it. */
export interface PaperContext {
  readonly plan: Plan;
  readonly results: Results;
  readonly site: Site;
  readonly tables: Tables;
}

/**
 * The context of shared papers: hidden zones are taken out of plan and site.
 *
 * results  as `withoutHidden` gives them
 */
export function sharedContext(context: PaperContext): PaperContext {
  const shown = (zones: readonly Zone[]): readonly Zone[] => zones.filter((zone) => !zone.hidden);
  const { plan, site } = context;
  return {
    ...context,
    plan: { ...plan, zones: shown(plan.zones) },
    site: { ...site, zones: shown(site.zones) },
  };
}
