import type { SupportKind } from "../../src/kit/index.ts";
import type { LayoutFacts, SearchCosts, SearchInput } from "../../src/layout/index.ts";
import type { Plot, Raster, Site, Zone } from "../../src/site/index.ts";

/** A small invented site for tests of the search: one metre cells, ground by a function of place. */
export function smallTerrain(
  width: number,
  height: number,
  ground: (x: number, y: number) => number,
): Raster {
  const values = new Float32Array((width + 1) * (height + 1));
  for (let j = 0; j <= height; j++)
    for (let i = 0; i <= width; i++) values[j * (width + 1) + i] = ground(i, j);
  return { cols: width + 1, rows: height + 1, x0: 0, y0: 0, dx: 1, dy: 1, values };
}

export function smallSite(
  terrain: Raster,
  plots: readonly Plot[],
  zones: readonly Zone[] = [],
  start = { x: 5, y: 5 },
): Site {
  return {
    crs: { kind: "local", name: "test grid" },
    datum: "test datum",
    terrain,
    zones,
    starts: [{ id: "start", name: "Start", ...start }],
    plots,
    levels: [],
    readings: [],
    height_band_m: null,
    ground: null,
    series: null,
  };
}

export const plotAt = (id: string, x: number, y: number, keep_off_m = 0.5, reach_m = 2): Plot => ({
  id,
  name: id,
  x,
  y,
  keep_off_m,
  reach_m,
});

export const zone = (
  id: string,
  use: Zone["use"],
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  more: Partial<Zone> = {},
): Zone => ({
  id,
  name: id,
  use,
  polygons: [
    [
      [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ],
    ],
  ],
  hidden: false,
  source: "test",
  ...more,
});

export const sleeper: SupportKind = {
  id: "sleeper",
  name: "Sleeper",
  form: "sleeper",
  height_min_mm: 90,
  height_max_mm: 500,
  height_step_mm: 1,
  sill: { size: "4x4", length_mm: 600, lay: "flat" },
  pieces: [],
  feet: [{ along_mm: 100, across_mm: 600, offset_across_mm: 0 }],
  rating_n: null,
  anchor: null,
  screws: [],
  stands: { ground_above_m: null, not_in: ["channel", "pool"] },
};

export const postPair: SupportKind = {
  ...sleeper,
  id: "post-pair",
  name: "Post pair",
  form: "post-pair",
  height_min_mm: 300,
  height_max_mm: 2000,
  feet: [
    { along_mm: 90, across_mm: 90, offset_across_mm: -250 },
    { along_mm: 90, across_mm: 90, offset_across_mm: 250 },
  ],
};

/** Lattice of one metre; modules of 1, 2 and 3 steps; platform of 2 steps. */
export const smallFacts: LayoutFacts = {
  lattice_m: 1,
  depth_m: 0.15,
  width_m: 0.6,
  gap_m: 0,
  lengths_m: [3, 2, 1],
  platform_side_m: 2,
  supports: [sleeper],
};

export const smallCosts: SearchCosts = {
  module: [90, 70, 50],
  platform: 120,
  support: [{ least: 20, per_m: 5 }],
  labour_per_m: 3,
};

export const smallInput = (site: Site, more: Partial<SearchInput> = {}): SearchInput => ({
  site,
  choice: {
    weights: { money: 1, shade_per_m2: 2, contact_per_m2: 10, crossing: 30 },
    heading_step_deg: 90,
    first_heading_deg: 0,
    max_grade: 0.1,
    min_clear_mm: 0,
    lines: [],
    passing_every_m: null,
    as_laid: [],
    slop_mm: 25,
  },
  laying: { from: "2026-09-01", to: "2026-09-10" },
  facts: smallFacts,
  costs: smallCosts,
  ...more,
});
