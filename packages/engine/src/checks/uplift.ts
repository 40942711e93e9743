import { defineConstant, defineFormula, type Trace } from "../formula/index.ts";
import { pullOut, type StakeState } from "../anchors/index.ts";
import {
  buoyantUplift,
  displacedWeight,
  flotationSafety,
  holdDown,
  requiredHoldDown,
  selfWeightFactor,
} from "../flood/index.ts";
import { densityAtMoisture, weightOf } from "../structure/index.ts";
import { M_PER_IN, inches, metres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import { FLOOD } from "./cautions.ts";
import { partMass } from "./formulas.ts";
import { MISSING_STRENGTH, recordStrength, type GroundStrength } from "./ground-strength.ts";
import type { CheckContext, PartMass } from "./input.ts";
import { cannotCheck, notApplicable, resultOf, type Verdict } from "./result.ts";
import { dryMoisture, steelDensity } from "./rules.ts";
import { pileStrength } from "./screw-pile.ts";
import type { ScrewPiles } from "../kit/index.ts";
import type { Backwards, CheckBase, CheckResult } from "./types.ts";

/** Screw piles of one support that hold one part. */
export interface PileHold {
  /** How many count for this part; halves are allowed. */
  readonly count: number;
  readonly piles: ScrewPiles;
  readonly depth_m: number;
}

/** Stakes and screw piles of one support that hold one part: half of the support's, since it carries two. */
export interface Hold {
  /** How many stakes count for this part; halves are allowed. */
  readonly stakes: number;
  readonly size: string;
  readonly embedment_m: number;
  readonly strength: GroundStrength | null;
  /** How the stakes stand; set for weeks when left out. */
  readonly state?: StakeState;
  readonly pile?: PileHold;
}

/** A module or platform with its share of the supports under it, and the water over it. */
export interface AfloatPart {
  readonly gravity: Qty<"1">;
  readonly mass: PartMass;
  readonly holds: readonly Hold[];
  readonly water_kg_m3: number;
  /** Flood level less the underside of the part [m]; null on a dry site. */
  readonly depth_m: number | null;
}

export interface UpliftLabel {
  readonly id: string;
  readonly name: string;
  readonly parts: readonly string[];
  readonly level: string;
}

/** Volume that displaces water. V timber [m3], m_o other mass [kg], rho_s its density [kg/m3]; V_t [m3]. */
export const displacedVolume = defineFormula(
  {
    id: "check.displaced-volume",
    title: "Volume under water",
    symbol: "V_t",
    unit: "m3",
    text: "V + m_o / rho_s",
    inputs: { V: "m3", m_o: "kg", rho_s: "kg/m3" },
    validity: "The whole part and its share of the supports under water.",
    source: { id: "geometry", title: "Geometry", at: "timber, and steel by its density", status: "computed" },
  },
  ({ V, m_o, rho_s }) => V + m_o / rho_s,
);

/** Pull-out of all stakes that count. n [1], R_1 [N]; R [N]. */
export const allStakes = defineFormula(
  {
    id: "check.stakes",
    title: "Pull-out of the stakes at one end that count for this part",
    symbol: "R",
    unit: "N",
    text: "n * R_1",
    inputs: { n: "1", R_1: "N" },
    validity: "Stakes far enough apart to hold alone; half of a support's stakes count for each neighbour.",
    source: { id: "statics", title: "Statics", at: "stakes add up", status: "computed" },
  },
  ({ n, R_1 }) => n * R_1,
);

export const stakeShare = defineConstant(
  "check.stake-share",
  "Part of a support's stakes and timber that counts for one of the parts it carries",
  "k_h",
  0.5,
  "1",
  {
    id: "causey-checks",
    title: "Project decision on checks",
    at: "a support serves two parts",
    status: "project",
  },
);

const baseOf = (label: UpliftLabel): CheckBase => ({
  id: `uplift.${label.id}`,
  kind: "uplift",
  title: `Staying put under water, ${label.name}`,
  parts: label.parts,
  rule: flotationSafety.spec.source,
  caution: FLOOD,
});

/**
 * Whether a part stays put with the flood over it: pull-out of its stakes and 0.9 of its dry weight against 1.5
 * times the gross upward force of the water on all that is under it. Partly covered parts count as wholly under.
 */
export function checkUplift(part: AfloatPart, label: UpliftLabel, context: CheckContext): CheckResult {
  const base = baseOf(label);
  if (part.depth_m === null) return notApplicable(base, "the plan names no flood level: a dry site");
  if (part.depth_m <= 0)
    return notApplicable(
      base,
      `${label.level} stays ${showQuantity(-part.depth_m, "m", context.units)} under its underside`,
    );
  const staked = part.holds.filter((h) => h.stakes > 0);
  if (part.holds.some((h) => (h.stakes > 0 || h.pile) && h.strength === null))
    return cannotCheck(base, [MISSING_STRENGTH]);
  const unknown = staked.filter((h) => !context.tables.sizes.some((s) => s.id === h.size));
  if (unknown.length > 0)
    return cannotCheck(
      base,
      unknown.map((h) => `the actual size of a stake "${h.size}"`),
    );
  const verdict = upliftVerdict(part, label, context);
  return resultOf(base, verdict, upliftBackwards(part, verdict, context));
}

function upliftVerdict(part: AfloatPart, label: UpliftLabel, context: CheckContext): Verdict<"N"> {
  const working: Trace = [];
  const rho = densityAtMoisture({ G: part.gravity, M: dryMoisture({}, working) }, working);
  const V = qty(part.mass.timber_m3, "m3");
  const m_o = qty(part.mass.other_kg, "kg");
  const rho_w = qty(part.water_kg_m3, "kg/m3");
  const weight = weightOf(
    { m: partMass({ V, rho, m_o }, working) },
    working,
    "part and its share of supports",
  );
  const V_t = volumeUnder(part.mass, working);
  const B = displacedWeight({ rho_w, V: V_t }, working);
  buoyantUplift({ rho_w, rho, V }, working, "timber alone, for comparison");
  const R = part.holds.reduce((sum, hold) => sum + holdOf(hold, context, working), 0);
  const capacity = holdDown({ R: newtons(R), k_w: selfWeightFactor({}, working), W: weight }, working);
  const demand = requiredHoldDown({ n_f: flotationSafety({}, working), B }, working);
  return { unit: "N", demand, capacity, governs: `${label.level}, dry wood`, working };
}

/** Timber, panels and floats by their volume, the rest as steel [m3]. */
export function volumeUnder(mass: PartMass, working?: Trace): Qty<"m3"> {
  const heavy = Math.max(0, mass.other_kg - (mass.bulk_kg ?? 0));
  const V = qty(mass.timber_m3 + (mass.bulk_m3 ?? 0), "m3");
  const rho_s = steelDensity({}, heavy > 0 ? working : undefined);
  const note = mass.bulk_m3 ? "V: timber, panels and floats" : undefined;
  return displacedVolume({ V, m_o: qty(heavy, "kg"), rho_s }, working, note);
}

/** What stakes and piles at one end hold [N]; 0 without any. */
export function holdOf(hold: Hold, context: CheckContext, trace?: Trace): number {
  return stakesOf(hold, context, trace) + pilesOf(hold, trace);
}

function pilesOf({ pile, strength }: Hold, trace?: Trace): number {
  if (!pile || !strength) return 0;
  if (trace) recordStrength(strength, trace);
  const R_1 = pileStrength(pile.piles, pile.depth_m, strength.su, trace);
  return allStakes({ n: qty(pile.count, "1"), R_1 }, trace, "screw piles");
}

function stakesOf(hold: Hold, { tables }: CheckContext, trace?: Trace): number {
  const size = tables.sizes.find((s) => s.id === hold.size);
  if (hold.stakes <= 0 || !hold.strength || !size) return 0;
  const { su } = hold.strength;
  if (trace) recordStrength(hold.strength, trace);
  const section = {
    shape: "rectangle",
    facing: inches(size.thickness_in),
    along: inches(size.width_in),
  } as const;
  const state = hold.state ?? "set";
  const R_1 = pullOut({ section, embedment: metres(hold.embedment_m), su, state }, trace);
  return allStakes({ n: qty(hold.stakes, "1"), R_1 }, trace);
}

/** A round step of a builder's tape [m]. */
const STEP_M = { us: 2 * M_PER_IN, metric: 0.05 } as const;
const MOST_DEEPER = 40;
const MOST_STAKES = 8;

function upliftBackwards(part: AfloatPart, v: Verdict<"N">, context: CheckContext): Backwards {
  const ratio = (v.capacity / v.demand) * flotationSafety({});
  const carries = `Holds ${ratio.toFixed(2)} times the water's upward force; asked for is ${flotationSafety({})}.`;
  if (v.demand <= v.capacity) return { carries, change: null };
  const missing = v.demand - v.capacity;
  const staked = part.holds.some((h) => h.stakes > 0);
  if (!staked)
    return {
      carries,
      change: `Needs stakes that hold ${showQuantity(missing, "N", context.units)} together.`,
    };
  const words = [...deeper(part, v, context), ...more(part, v, context)];
  const change =
    words.length > 0
      ? `Would pass with ${words.join(", or ")}.`
      : `Needs ${showQuantity(missing, "N", context.units)} more hold than stakes of this kind give here: take it up before the flood, or use screw anchors.`;
  return { carries, change };
}

const total = (holds: readonly Hold[], context: CheckContext): number =>
  holds.reduce((sum, hold) => sum + holdOf(hold, context), 0);

function deeper(part: AfloatPart, v: Verdict<"N">, context: CheckContext): string[] {
  const missing = v.demand - v.capacity;
  const now = total(part.holds, context);
  for (let i = 1; i <= MOST_DEEPER; i++) {
    const by = i * STEP_M[context.units];
    const holds = part.holds.map((h) => ({ ...h, embedment_m: h.embedment_m + by }));
    if (total(holds, context) - now >= missing)
      return [`stakes ${showQuantity(by, "m", context.units)} longer and deeper in the ground`];
  }
  return [];
}

function more(part: AfloatPart, v: Verdict<"N">, context: CheckContext): string[] {
  const missing = v.demand - v.capacity;
  const now = total(part.holds, context);
  const half = stakeShare({});
  const most = Math.max(...part.holds.map((h) => h.stakes)) / half;
  for (let i = 1; i <= MOST_STAKES; i++) {
    const holds = part.holds.map((h) => (h.stakes > 0 ? { ...h, stakes: h.stakes + i * half } : h));
    if (total(holds, context) - now >= missing)
      return [`${most + i} stakes at each support instead of ${most}`];
  }
  return [];
}
