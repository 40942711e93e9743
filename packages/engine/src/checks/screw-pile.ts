import { recordValue, type Trace } from "../formula/index.ts";
import {
  helixArea,
  helixDepth,
  leastHelixDepth,
  netBearingCapacity,
  pilePull,
  screwPileAllowed,
  screwPileCapacity,
} from "../ground/index.ts";
import type { ScrewPiles } from "../kit/index.ts";
import { weightOf } from "../structure/index.ts";
import { kilograms, metres, millimetres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import { stanceOf, footDemand, type BearingJoint, type Stance } from "./bearing.ts";
import { liveMemory, type BearingDemand, type BearingLabel, type LiveMemory } from "./bearing-check.ts";
import { ENGINEER, SOIL } from "./cautions.ts";
import { MISSING_STRENGTH, recordStrength, type GroundStrength } from "./ground-strength.ts";
import type { CheckContext } from "./input.ts";
import { carriesText } from "./ladder.ts";
import { cannotCheck, resultOf } from "./result.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import type { LoadCase } from "./walk-demand.ts";

export interface PileJoint extends BearingJoint {
  readonly piles: ScrewPiles;
  /** Lowest helix below ground at this joint's height [m]. */
  readonly depth_m: number;
}

const baseOf = (label: BearingLabel, part: string, title: string, rule: CheckBase["rule"]): CheckBase => ({
  id: `bearing.${part}.${label.id}`,
  kind: "bearing",
  title: `${title}, ${label.name}`,
  parts: label.parts,
  rule,
  caution: `${ENGINEER} Fresh piles hold less until the ground has set up; the shaft's friction is left out; bending of the shaft by people, water or ice is not checked. ${SOIL}`,
});

/** What one pile holds at most, pressed or pulled [N]. */
export function pileStrength(piles: ScrewPiles, depth_m: number, su: Qty<"Pa">, trace?: Trace): Qty<"N"> {
  const D = millimetres(piles.helix_mm);
  const A_h = helixArea({ D, d: millimetres(piles.shaft_mm) }, trace);
  const q = netBearingCapacity({ su, B: D, L: D, D: metres(depth_m) }, trace);
  return screwPileCapacity({ n: qty(piles.helices, "1"), q, A_h }, trace);
}

/** What one pile of this support may hold, pressed or pulled, over the plan's safety [N]. */
export const pileCapacity = (
  piles: ScrewPiles,
  depth_m: number,
  su: Qty<"Pa">,
  safety: number,
  trace?: Trace,
): Qty<"N"> => screwPileAllowed({ Q: pileStrength(piles, depth_m, su, trace), F: qty(safety, "1") }, trace);

/**
 * Screw piles of one joint: the most loaded pile pressed, the lightest one pulled when people stand at the edge, and
 * the depth of the lowest helix. Every result asks for an engineer.
 */
export function checkScrewPiles(
  joint: PileJoint,
  strength: GroundStrength | null,
  demand: BearingDemand,
  label: BearingLabel,
  context: CheckContext,
  memory: LiveMemory = liveMemory(),
): CheckResult[] {
  const press = baseOf(label, "screw-pile", "Screw piles pressed", screwPileCapacity.spec.source);
  const pull = baseOf(label, "screw-pile.pull", "Screw piles pulled", screwPileCapacity.spec.source);
  const known = strength ? [] : [MISSING_STRENGTH];
  if (!strength)
    return [cannotCheck(press, known), cannotCheck(pull, known), checkDepth(joint, label, context)];
  const stance = stanceOf(joint);
  return [
    pressed(press, stance, joint, strength, demand, context, memory),
    pulled(pull, stance, joint, strength, demand, context, memory),
    checkDepth(joint, label, context),
  ];
}

function worstOf(cases: readonly LoadCase[], of: (load: LoadCase) => number): LoadCase {
  return cases.reduce((a, b) => (of(b) > of(a) ? b : a));
}

function pressed(
  base: CheckBase,
  stance: Stance,
  joint: PileJoint,
  strength: GroundStrength,
  { cases, rungs, safety }: BearingDemand,
  { units }: CheckContext,
  memory: LiveMemory,
): CheckResult {
  const onPile = (load: LoadCase): number => footDemand(stance, memory.of(joint, load)).load;
  const worst = worstOf(cases, onPile);
  const working: Trace = [];
  worst.explain(working);
  recordLive(memory, joint, worst, working);
  const demand = newtons(footDemand(stance, memory.of(joint, worst), working).load);
  recordStrength(strength, working);
  const capacity = pileCapacity(joint.piles, joint.depth_m, strength.su, safety, working);
  const carries = carriesText(
    rungs,
    (load) => onPile(load) <= capacity,
    "less than one person on these piles",
  );
  const change = demand <= capacity ? null : stouterPile(joint, demand, strength.su, safety, units);
  return resultOf(base, { unit: "N", demand, capacity, governs: worst.name, working }, { carries, change });
}

function recordLive(memory: LiveMemory, joint: PileJoint, load: LoadCase, working: Trace): void {
  const live = memory.of(joint, load);
  const source = {
    id: "statics",
    title: "Statics",
    at: "influence line of a joint; load by its distance from the middle",
    status: "computed",
  } as const;
  const how = "largest over all places of the train";
  recordValue(working, {
    id: "structure.joint-reaction",
    title: "Largest live load on the joint",
    symbol: "N_l",
    value: live.N,
    unit: "N",
    source,
    how,
  });
  recordValue(working, {
    id: "check.joint-moment",
    title: "Its moment about the middle of the walkway",
    symbol: "m",
    value: live.m,
    unit: "N*m",
    source,
    how: "every load as far out as it can stand",
  });
}

function stouterPile(
  joint: PileJoint,
  demand: number,
  su: Qty<"Pa">,
  safety: number,
  units: CheckContext["units"],
): string {
  const holds = (piles: ScrewPiles): boolean => pileCapacity(piles, joint.depth_m, su, safety) >= demand;
  const wider = Array.from({ length: 12 }, (_, i) => joint.piles.helix_mm + (i + 1) * 50.8).find((helix_mm) =>
    holds({ ...joint.piles, helix_mm }),
  );
  const more = [1, 2, 3]
    .map((i) => joint.piles.helices + i)
    .find((helices) => holds({ ...joint.piles, helices }));
  const words = [
    ...(wider ? [`a helix of ${showQuantity(wider / 1000, "m", units)}`] : []),
    ...(more ? [`${more} helices on each pile`] : []),
  ];
  return words.length > 0
    ? `Would pass with ${words.join(", or ")}.`
    : "No ordinary pile passes on this ground: go deeper to firmer ground, or keep off it.";
}

function pulled(
  base: CheckBase,
  stance: Stance,
  joint: PileJoint,
  strength: GroundStrength,
  { cases, safety }: BearingDemand,
  { units }: CheckContext,
  memory: LiveMemory,
): CheckResult {
  const outer = metres(Math.max(...stance.feet.map((f) => f.offset_m)));
  const pullOf = (load: LoadCase, trace?: Trace): Qty<"N"> => {
    const live = memory.of(joint, load);
    const dead = weightOf({ m: kilograms(joint.dead_kg) }, trace, "parts on the joint and the support");
    return pilePull(
      {
        N: newtons(dead + live.N),
        m: qty(live.m, "N*m"),
        n: qty(stance.count, "1"),
        o: outer,
        Q: qty(Math.max(stance.spread_m2, 1e-9), "m2"),
      },
      trace,
    );
  };
  const worst = worstOf(cases, pullOf);
  const working: Trace = [];
  worst.explain(working);
  recordLive(memory, joint, worst, working);
  const demand = pullOf(worst, working);
  recordStrength(strength, working);
  const capacity = pileCapacity(joint.piles, joint.depth_m, strength.su, safety, working);
  const carries = `Each pile may be pulled with ${showQuantity(capacity, "N", units)}.`;
  const change = "Needs piles wider apart across the walk, or a narrower deck.";
  return resultOf(
    base,
    { unit: "N", demand, capacity, governs: worst.name, working },
    { carries, change: demand <= capacity ? null : change },
  );
}

function checkDepth(joint: PileJoint, label: BearingLabel, { units }: CheckContext): CheckResult {
  const working: Trace = [];
  const n_z = leastHelixDepth({}, working);
  const demand = helixDepth({ n_z, D: millimetres(joint.piles.helix_mm) }, working);
  const say = (m: number): string => showQuantity(m, "m", units);
  return resultOf(
    baseOf(label, "screw-pile.depth", "Depth of the screw piles", leastHelixDepth.spec.source),
    { unit: "m", demand, capacity: metres(joint.depth_m), governs: "the lowest helix", working },
    {
      carries: `The lowest helix lies ${say(joint.depth_m)} below the surface.`,
      change:
        demand <= joint.depth_m
          ? null
          : `Would pass with piles ${say(demand - joint.depth_m)} longer, turned in as much deeper.`,
    },
  );
}
