import type { Layout } from "../layout/index.ts";
import type { Plan } from "../plan/document.ts";
import { groundAt, type Site, type WaterLevel } from "../site/index.ts";

/** What the place says about every kind. */
export interface PlaceFacts {
  /** Deepest probe of the survey [m]; null = not probed. */
  readonly peat_m: number | null;
  /** Lowest ground under the line, or at the plots where there is no layout yet [m]; null = not known. */
  readonly lowest_m: number | null;
  readonly flood: WaterLevel | null;
  readonly has_channel: boolean;
  /** Names of seasonal closures that may be shown. */
  readonly closures: readonly string[];
}

export function placeFacts(plan: Plan, site: Site, layout: Layout | null): PlaceFacts {
  const probes = plan.survey.stations.flatMap((st) => st.probe_m ?? []);
  const grounds = (
    layout && layout.joints.length > 0
      ? layout.joints.map((j) => j.ground_m)
      : site.plots.map((p) => groundAt(site.terrain, p.x, p.y))
  ).filter((z) => !Number.isNaN(z));
  const levels = [...site.levels, ...plan.levels];
  const flood = levels.find((l) => l.id === plan.flood_level && l.datum === site.datum) ?? null;
  return {
    peat_m: probes.length > 0 ? Math.max(...probes) : null,
    lowest_m: grounds.length > 0 ? Math.min(...grounds) : null,
    flood,
    has_channel: site.zones.some((z) => z.use === "channel" || z.use === "pool"),
    closures: site.zones.filter((z) => z.use === "seasonal-closure" && !z.hidden).map((z) => z.name),
  };
}

/** How deep the flood stands over the lowest ground [m]; null when either is not known. */
export const floodDepth = ({ flood, lowest_m }: PlaceFacts): number | null =>
  flood && lowest_m !== null ? flood.z_m - lowest_m : null;
