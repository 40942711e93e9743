import type { Trace } from "../formula/index.ts";
import { footPressure, netBearingCapacity } from "../ground/index.ts";
import type { Plan, Visit } from "../plan/document.ts";
import type { Site } from "../site/index.ts";
import { weightOf } from "../structure/index.ts";
import { kilograms, metres, pascals, qty, showQuantity, type UnitSystem } from "../units/index.ts";
import { footfalls, soleLength, soleWidth, stride } from "./formulas.ts";

/** What "no structure" would do: how often feet fall, and whether they go in. */
export interface OnFoot {
  /** Footfalls a year of all visits; null when no way from a start to a plot is known. */
  readonly footfalls: number | null;
  /** Pressure under one foot over what the ground bears; null when its strength is not known. */
  readonly sinking: number | null;
  readonly words: readonly string[];
  readonly working: Trace;
}

/** Straight way from the nearest start to the farthest plot of a visit [m]; null when either is missing. */
function wayOf(visit: Visit, { starts, plots }: Site): number | null {
  const wanted = plots.filter((p) => visit.plots.includes(p.id));
  if (wanted.length === 0 || starts.length === 0) return null;
  const near = (p: { x: number; y: number }): number =>
    Math.min(...starts.map((s) => Math.hypot(s.x - p.x, s.y - p.y)));
  return Math.max(...wanted.map(near));
}

/** The lowest strength that is known anywhere on the line [kPa]; null when none is. */
function weakest(plan: Plan, site: Site): number | null {
  const known = [...site.readings, ...plan.ground.readings].map((r) => r.su_kpa);
  const all = plan.ground.su_kpa === null ? known : [...known, plan.ground.su_kpa];
  return all.length > 0 ? Math.min(...all) : null;
}

/** Footfalls of a year and the pressure of one foot against Skempton's capacity of the weakest ground known. */
export function onFoot(plan: Plan, site: Site): OnFoot {
  const working: Trace = [];
  const falls = plan.visits.flatMap((visit) => {
    const way = wayOf(visit, site);
    if (way === null) return [];
    const args = { l: metres(way), s: stride({}), n: qty(visit.people, "1"), v: qty(visit.per_year, "1") };
    return [footfalls(args, working, visit.name)];
  });
  const total = falls.length > 0 ? falls.reduce((a, b) => a + b, 0) : null;
  const sinking = sinkingOf(plan, site, working);
  return { footfalls: total, sinking, working, words: wordsOf(total, sinking, plan.units, working) };
}

function sinkingOf(plan: Plan, site: Site, working: Trace): number | null {
  const su = weakest(plan, site);
  const people = plan.visits.filter((v) => v.people > 0).map((v) => v.person_kg);
  if (su === null || people.length === 0) return null;
  const F = weightOf({ m: kilograms(Math.max(...people)) }, working, "one person with the pack, on one foot");
  const [a, b] = [soleLength({}, working), soleWidth({}, working)];
  const p = footPressure({ F, a, b }, working, "walking");
  const q = netBearingCapacity(
    { su: pascals(su * 1000), B: b, L: a, D: metres(0) },
    working,
    "weakest ground known",
  );
  return p / q;
}

function wordsOf(total: number | null, sinking: number | null, units: UnitSystem, working: Trace): string[] {
  const pressure = working.find((s) => s.id === "ground.foot-pressure")?.value;
  const capacity = working.find((s) => s.id === "ground.bearing.skempton")?.value;
  const say = (v: number): string => showQuantity(v, "Pa", units);
  return [
    total === null
      ? "How often feet would fall cannot be said: no visit has a way from a start to a plot."
      : `The visits are about ${showQuantity(roundUp(total), "1", units).replace(/\.00$/, "")} footfalls a year.`,
    sinking === null || pressure === undefined || capacity === undefined
      ? "Whether feet go in cannot be said: the ground's strength is not known, or no visit tells who walks."
      : sinking > 1
        ? `A foot presses ${say(pressure)} and the weakest ground known bears ${say(capacity)}: feet go in.`
        : `A foot presses ${say(pressure)} and the weakest ground known bears ${say(capacity)}: feet stay on top the first time; repeated steps weaken it.`,
  ];
}

/** Two figures, never below the truth. */
function roundUp(v: number): number {
  if (v <= 0) return 0;
  const step = 10 ** Math.max(0, Math.floor(Math.log10(v)) - 1);
  return Math.ceil(v / step - 1e-9) * step;
}
