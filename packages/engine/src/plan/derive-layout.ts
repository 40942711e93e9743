import { partCosts } from "../cost/index.ts";
import { kitGeometry, type Kit } from "../kit/index.ts";
import { labourHours } from "../laying/index.ts";
import type { LayoutFacts, SearchCosts } from "../layout/index.ts";
import type { LumberSize, Price, Tables } from "../materials/index.ts";
import type { Plan } from "./document.ts";

/** The kit as the layout search sees it, in metres. */
export function layoutFacts(kit: Kit, sizes: readonly LumberSize[]): LayoutFacts {
  const g = kitGeometry(kit, sizes);
  return {
    lattice_m: g.lattice_m,
    depth_m: g.module_depth_m,
    width_m: g.deck_width_m,
    gap_m: g.joint_gap_m,
    lengths_m: [...kit.lengths_mm].sort((a, b) => b - a).map((l) => l / 1000),
    platform_side_m: g.platform_side_m,
    supports: kit.supports,
  };
}

/** Money the search reckons with: materials by the part, labour by the metre. */
export function searchCosts(plan: Plan, prices: readonly Price[], tables: Tables): SearchCosts {
  const { kit, money } = plan;
  const costs = partCosts(kit, prices, tables.sizes);
  const lengths = [...kit.lengths_mm].sort((a, b) => b - a);
  const metre = labourHours(
    { length_m: 1, carry_m: plan.laying.carry_m, removal_share: money.removal_share },
    tables.labour,
  );
  return {
    module: lengths.map((l) => costs.module(l)),
    platform: costs.platform,
    support: kit.supports.map((s) => {
      const low = costs.support(s.id, s.height_min_mm / 1000);
      const high = costs.support(s.id, s.height_max_mm / 1000);
      const rise = (s.height_max_mm - s.height_min_mm) / 1000;
      return { least: low, per_m: low === null || high === null || rise === 0 ? 0 : (high - low) / rise };
    }),
    labour_per_m: metre.reduce((sum, line) => sum + line.mid_h, 0) * money.labour_per_hour,
  };
}
