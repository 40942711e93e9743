import type { Joint, Part } from "../layout/index.ts";
import { fallReach } from "../rules/index.ts";
import { groundAt, type Raster } from "../site/index.ts";
import type { Setting } from "./setting.ts";

/** The worst place to fall from one part. */
export interface EdgeFall {
  readonly part: Part;
  /** Top of the deck there, and the lowest ground or bed within reach of its edges; null = no ground is known [m]. */
  readonly deck_m: number;
  readonly ground_m: number | null;
  /** Some ground within reach is not known. */
  readonly has_gaps: boolean;
}

/** A part as a sloping rectangle: from its first joint to the far one. */
interface Strip {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly length: number;
  readonly half: number;
  readonly from_m: number;
  readonly to_m: number;
}

function stripOf(setting: Setting, joints: ReadonlyMap<string, Joint>, part: Part): Strip | null {
  const a = joints.get(part.from);
  const b = joints.get(part.kind === "module" ? part.to : part.exits.ahead);
  if (!a || !b) return null;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length <= 0) return null;
  const width = part.kind === "module" ? setting.geometry.deck_width_m : part.side_m;
  return {
    x: a.x,
    y: a.y,
    dx: (b.x - a.x) / length,
    dy: (b.y - a.y) / length,
    length,
    half: width / 2,
    from_m: a.deck_m,
    to_m: b.deck_m,
  };
}

const SPACING = 0.5;
const spacingOf = (r: Raster): number => Math.max(0.25, Math.min(SPACING, r.dx, r.dy));

/** Evenly spaced numbers from `from` to `to`, both ends among them. */
function evenly(from: number, to: number, spacing: number): number[] {
  const pieces = Math.max(1, Math.ceil((to - from) / spacing));
  return Array.from({ length: pieces + 1 }, (_, i) => from + ((to - from) * i) / pieces);
}

/** Deepest fall from every part, on a fine grid under the deck and beside it; unknown ground is never guessed. */
export function edgeFalls(setting: Setting): EdgeFall[] {
  const { site, layout } = setting.input;
  const spacing = spacingOf(site.terrain);
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  return layout.parts.flatMap((part) => {
    const strip = stripOf(setting, joints, part);
    return strip ? [worstFall(part, strip, site.terrain, spacing)] : [];
  });
}

function worstFall(part: Part, s: Strip, terrain: Raster, spacing: number): EdgeFall {
  const reach = s.half + fallReach({});
  let worst = -Infinity;
  let at: { deck: number; ground: number } | null = null;
  let has_gaps = false;
  for (const t of evenly(0, s.length, spacing)) {
    const deck = s.from_m + ((s.to_m - s.from_m) * t) / s.length;
    for (const o of evenly(-reach, reach, spacing)) {
      const ground = groundAt(terrain, s.x + s.dx * t + s.dy * o, s.y + s.dy * t - s.dx * o);
      if (Number.isNaN(ground)) has_gaps = true;
      else if (deck - ground > worst) {
        worst = deck - ground;
        at = { deck, ground };
      }
    }
  }
  return { part, deck_m: at?.deck ?? s.from_m, ground_m: at?.ground ?? null, has_gaps };
}
