import { checkedPlan, checksInput, levelSite, straightLayout } from "./straight-walkway.ts";

import type { Layout, PlatformPart } from "../../src/layout/index.ts";
import type { Plan } from "../../src/plan/document.ts";
import type { Raster, Site } from "../../src/site/index.ts";
import { runChecks, type CheckResult } from "../../src/checks/index.ts";

export const FT = 0.3048;
export const IN = 0.0254;

/** Half-metre cells around a walkway along x from 0 to 12 m. */
export function ground(heightAt: (x: number, y: number) => number): Raster {
  const [cols, rows] = [45, 41];
  const values = new Float32Array(cols * rows);
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < cols; i++) values[j * cols + i] = heightAt(-5 + i / 2, -10 + j / 2);
  return { cols, rows, x0: -5, y0: -10, dx: 0.5, dy: 0.5, values };
}
export const level = (z: number): Raster => ground(() => z);

export interface Setup {
  readonly profile?: string;
  readonly plan?: Partial<Plan>;
  readonly site?: Partial<Site>;
  readonly layout?: Layout;
  readonly overrides?: Plan["rules"]["overrides"];
}
export const check = ({ profile = "staff-access", plan = {}, site = {}, layout, overrides = [] }: Setup) =>
  runChecks(
    checksInput({
      plan: checkedPlan({ rules: { profile, overrides }, ...plan }),
      site: levelSite({ terrain: level(1), ...site }),
      ...(layout ? { layout } : {}),
    }),
  );
export const byId = (results: readonly CheckResult[], id: string): CheckResult | undefined =>
  results.find((r) => r.id === id);
export const statusOf = (results: readonly CheckResult[], id: string): string =>
  results
    .filter((r) => r.id.startsWith(`${id}.`))
    .map((r) => r.status)
    .join(" ");
export const useOf = (r: CheckResult | undefined): number => (r && "utilisation" in r ? r.utilisation : NaN);

/** The walkway with its deck at a height over level ground at 1 m. */
export const decked = (fall_m: number, lengths: readonly number[] = [3, 3]): Layout => {
  const layout = straightLayout(lengths);
  return { ...layout, joints: layout.joints.map((j) => ({ ...j, deck_m: 1 + fall_m })) };
};

const turning: PlatformPart = {
  id: "P1",
  kind: "platform",
  use: "turning",
  branch: "B1",
  side_m: 1.8288,
  x: 6.9,
  y: 0,
  heading_deg: 90,
  from: "J2",
  exits: { ahead: "J3", left: "J3", right: "J3" },
  along_m: 6,
  outline: [],
  bridges: [],
};
/** The walkway with a turning platform at its end. */
export function withPlatform(): Layout {
  const layout = straightLayout([3, 3, 1.8288]);
  return { ...layout, parts: [...layout.parts.slice(0, 2), turning] };
}
