import type { Job } from "../formula/index.ts";
import {
  SearchMemory,
  entryRamps,
  searchLayout,
  type Layout,
  type LayoutFacts,
  type SearchCosts,
} from "../layout/index.ts";
import type { Site } from "../site/index.ts";
import type { Plan } from "./document.ts";
import type { RuledChoice } from "./ruled-choice.ts";
import { atOnce, type StageCache, type Stages } from "./stages.ts";

/** What the layout search keeps from one derivation to the next [bytes]. */
const SEARCH_MEMORY_BYTES = 512e6;

export interface LayoutInputs {
  readonly plan: Plan;
  readonly site: Site;
  /** Hash of the site: terrain, zones, starts and plots. */
  readonly siteKey: string;
  readonly facts: LayoutFacts;
  readonly costs: SearchCosts;
  readonly ruled: RuledChoice;
}

/** Stages "layout" and "ramps": where the parts stand. Without a kept cache the search remembers nothing. */
export function* layoutStages(
  { plan, site, siteKey, facts, costs, ruled }: LayoutInputs,
  stages: Stages,
  kept: StageCache | undefined,
): Job<Layout> {
  const laying = { from: plan.laying.from, to: plan.laying.to };
  const { choice } = ruled;
  const found = yield* stages.run<Layout>("layout", 3, [siteKey, choice, laying, facts, costs], () =>
    searchLayout({ site, choice, laying, facts, costs }, memoryIn(kept)),
  );
  return yield* stages.run<Layout>("ramps", 2, [stages.keyOf("layout"), plan.kit.ramp, ruled.notes], () =>
    atOnce(() => ({
      ...found,
      notes: [...found.notes, ...ruled.notes],
      ramps: entryRamps({ layout: found, site, facts, laying: plan.laying, ramp: plan.kit.ramp }),
    })),
  );
}

/** The search's own memory travels with the stages: it outlives a stage whose inputs have changed. */
function memoryIn(cache: StageCache | undefined): SearchMemory {
  if (cache === undefined) return new SearchMemory(0);
  const kept = cache.get("search-memory")?.value;
  if (kept instanceof SearchMemory) return kept;
  const memory = new SearchMemory(SEARCH_MEMORY_BYTES);
  cache.set("search-memory", { key: "", value: memory });
  return memory;
}

/** Length along the walkway, gaps included [m]. */
export const walkwayLength = (layout: Layout, gap_m: number): number =>
  layout.parts.reduce((sum, p) => sum + (p.kind === "module" ? p.length_m : p.side_m) + gap_m, 0);
