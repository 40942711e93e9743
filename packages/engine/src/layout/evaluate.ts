import { FillRule, differenceD, unionD, type PathsD } from "clipper2-ts";
import { groundAt, polygonsArea, type Polygons, type Raster, type Site } from "../site/index.ts";
import { PLAIN_SENSITIVITY, habitatsOf, isWater } from "./fields.ts";
import { DECIMALS, sharedArea, toPaths } from "./shared-area.ts";
import type { Joint, Layout, LayoutFigures, Part, Weights } from "./types.ts";

const READ_SPACING = 0.1;

export interface MeasureInput {
  readonly layout: Layout;
  readonly site: Site;
  /** Underside of the module to the top of the deck [m]. */
  readonly depth_m: number;
  readonly gap_m: number;
}

export interface EvaluationInput extends MeasureInput {
  readonly weights: Weights;
  /** True money of the layout: the order list with labour, as far as it is priced. */
  readonly money: number;
}

/** What a layout is and does, before money and weights. */
export interface LayoutMeasures extends Omit<LayoutFigures, "weighted"> {
  /** Areas times the sensitivity of what they lie on [m2]. */
  readonly weighed: { readonly shade_m2: number; readonly contact_m2: number };
}

/** The true figures and the true weighted cost of a finished layout: the search only estimates them. */
export const evaluateLayout = (input: EvaluationInput): LayoutFigures =>
  weighLayout(measureLayout(input), input.weights, input.money);

/** Lengths, areas, crossings and heights of a finished layout. */
export function measureLayout(input: MeasureInput): LayoutMeasures {
  const { layout, site } = input;
  const outlines = layout.parts.map((p) => p.outline);
  const feet = layout.joints.map((j) => j.feet);
  const habitats = separateHabitats(site);
  const shaded = outlines.reduce((sum, o) => sum + polygonsArea(o), 0);
  const contact = feet.reduce((sum, f) => sum + polygonsArea(f), 0);
  const shadeShares = habitats.map((h) => sharedArea(outlines, h.paths));
  const contactShares = habitats.map((h) => sharedArea(feet, h.paths));
  return {
    length_m: layout.parts.reduce(
      (sum, p) => sum + (p.kind === "module" ? p.length_m : p.side_m) + input.gap_m,
      0,
    ),
    modules: countLengths(layout.parts),
    platforms: layout.parts.filter((p) => p.kind === "platform").length,
    joints: layout.joints.length,
    shaded_m2: shaded,
    shaded_by_zone: habitats.map((h, n) => ({ zone: h.id, name: h.name, area_m2: shadeShares[n]! })),
    contact_m2: contact,
    crossings: layout.parts.flatMap((part) => crossingsOf(part, layout, site)),
    lowest_deck_clear_m: lowestClear(layout, site.terrain, input.depth_m),
    steepest_grade: steepestGrade(layout, input.gap_m),
    weighed: {
      shade_m2: weigh(shaded, shadeShares, habitats),
      contact_m2: weigh(contact, contactShares, habitats),
    },
  };
}

/** The weighted cost of a measured layout; `money`: its true money. */
export function weighLayout(measures: LayoutMeasures, weights: Weights, money: number): LayoutFigures {
  const { weighed, ...figures } = measures;
  const weighted = {
    money: weights.money * money,
    shade: weights.shade_per_m2 * weighed.shade_m2,
    contact: weights.contact_per_m2 * weighed.contact_m2,
    crossings: weights.crossing * figures.crossings.length,
  };
  return {
    ...figures,
    weighted: { ...weighted, total: weighted.money + weighted.shade + weighted.contact + weighted.crossings },
  };
}

interface Habitat {
  readonly id: string;
  readonly name: string;
  readonly sensitivity: number;
  readonly paths: PathsD;
}

/** Habitats that do not overlap: where two do, the more sensitive one counts. */
function separateHabitats(site: Site): Habitat[] {
  let taken: PathsD = [];
  const found: Habitat[] = [];
  for (const zone of [...habitatsOf(site)].reverse()) {
    const whole = unionD(toPaths(zone.polygons), [], FillRule.EvenOdd, DECIMALS);
    found.push({
      id: zone.id,
      name: zone.name,
      sensitivity: zone.sensitivity!,
      paths: differenceD(whole, taken, FillRule.NonZero, DECIMALS),
    });
    taken = unionD(taken, whole, FillRule.NonZero, DECIMALS);
  }
  return found;
}

/** Area times sensitivity; what lies in no habitat counts as plain ground. */
function weigh(area: number, shares: readonly number[], habitats: readonly Habitat[]): number {
  const inside = shares.reduce((sum, s) => sum + s, 0);
  return (
    shares.reduce((sum, s, n) => sum + s * habitats[n]!.sensitivity, 0) +
    Math.max(0, area - inside) * PLAIN_SENSITIVITY
  );
}

function countLengths(parts: readonly Part[]): { length_m: number; count: number }[] {
  const counts = new Map<number, number>();
  for (const p of parts) if (p.kind === "module") counts.set(p.length_m, (counts.get(p.length_m) ?? 0) + 1);
  return [...counts]
    .map(([length_m, count]) => ({ length_m, count }))
    .sort((a, b) => b.length_m - a.length_m);
}

/** Channels and pools below a part's outline, with the clear width along its middle line. */
function crossingsOf(part: Part, layout: Layout, site: Site): LayoutFigures["crossings"][number][] {
  if (part.kind === "platform") return [];
  const from = layout.joints.find((j) => j.id === part.from)!;
  const to = layout.joints.find((j) => j.id === part.to)!;
  return site.zones
    .filter((z) => isWater(z) && part.bridges.includes(z.id))
    .map((z) => ({
      zone: z.id,
      name: z.name,
      part: part.id,
      clear_m: clearWidth(z.polygons, from, to),
    }));
}

function clearWidth(polygons: Polygons, from: Joint, to: Joint): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const at: number[] = [];
  for (const ring of polygons.flat())
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [ax, ay] = ring[j]!;
      const ex = ring[i]![0] - ax;
      const ey = ring[i]![1] - ay;
      const cross = dx * ey - dy * ex;
      if (cross === 0) continue;
      const t = ((ax - from.x) * ey - (ay - from.y) * ex) / cross;
      const s = ((ax - from.x) * dy - (ay - from.y) * dx) / cross;
      if (t >= 0 && t <= 1 && s >= 0 && s < 1) at.push(t);
    }
  at.sort((a, b) => a - b);
  const width = at.length < 2 ? 0 : at.at(-1)! - at[0]!;
  return width * Math.hypot(dx, dy);
}

/** Least distance from the ground to the underside of any module, read every 0.1 m along its middle line. */
function lowestClear(layout: Layout, terrain: Raster, depth: number): number {
  let least = Infinity;
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  for (const part of layout.parts) {
    if (part.kind !== "module") continue;
    const a = joints.get(part.from)!;
    const b = joints.get(part.to)!;
    const pieces = Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / READ_SPACING);
    for (let k = 0; k <= pieces; k++) {
      const t = k / pieces;
      const z = groundAt(terrain, a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);
      if (!Number.isNaN(z)) least = Math.min(least, a.deck_m + (b.deck_m - a.deck_m) * t - depth - z);
    }
  }
  return Number.isFinite(least) ? least : 0;
}

function steepestGrade(layout: Layout, gap: number): number {
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  return layout.parts.reduce(
    (most, p) =>
      p.kind === "module"
        ? Math.max(most, Math.abs(joints.get(p.to)!.deck_m - joints.get(p.from)!.deck_m) / (p.length_m + gap))
        : most,
    0,
  );
}
