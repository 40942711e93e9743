import { nearest } from "./creek.ts";
import { onGrid } from "./zones.ts";
import type { Meadow } from "./meadow.ts";
import type { Spot } from "./polygon.ts";
import { between, type Random } from "./random.ts";

export interface Reading {
  readonly x: number;
  readonly y: number;
  readonly depth_m: number;
  readonly su_kpa: number;
  readonly source: string;
}

const SPOTS: readonly Spot[] = [
  [128, 166],
  [126, 140],
  [131, 121],
  [112, 112],
  [88, 116],
  [70, 90],
  [60, 75],
  [158, 158],
  [196, 132],
  [200, 108],
  [214, 82],
  [160, 70],
];

/** Hand-vane readings of the invented walk-over: firmer on high ground, softer near creeks, 5 to 14 kPa. */
export function drawReadings(meadow: Meadow, random: Random): Reading[] {
  return SPOTS.map((spot) => {
    const [u, v] = spot;
    const bank = Math.min(...meadow.creeks.map((c) => nearest(c, u, v).distance));
    const su = 8 + 16 * (meadow.heightAt(u, v) - 1.5) - 3 * Math.exp(-bank / 6) + between(random, -1, 1);
    const [x, y] = onGrid(spot);
    return {
      x,
      y,
      depth_m: 0.3,
      su_kpa: Math.round(Math.min(14, Math.max(5, su)) * 10) / 10,
      source: "Hand vane, corrected; invented for the demo site, 2026-09",
    };
  });
}
