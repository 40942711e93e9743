import type { FastenerJoint } from "../codes/index.ts";
import { freshHole } from "../codes/index.ts";
import type { Trace } from "../formula/index.ts";
import { metres, newtons, qty, showQuantity } from "../units/index.ts";
import { GRADE } from "./cautions.ts";
import { forceDemand, liveCombination } from "./combination.ts";
import { spreadMoment } from "./fastening-formulas.ts";
import type { CheckContext, GradedLumber } from "./input.ts";
import { stouterSizes } from "./piece.ts";
import { cannotCheck, missingOf, resultOf } from "./result.ts";
import type { BeamPattern } from "./support-beam.ts";
import { checkMember, type PatternEffect } from "./support-member.ts";
import type { CheckBase, CheckResult } from "./types.ts";

/** A flat piece between two stringers at a joint: the catch board, or the start piece that lies on it. */
export interface JointPiece {
  /** "catch board". */
  readonly name: string;
  readonly size: string;
  readonly lumber: GradedLumber;
  /** Clear between the stringers [m]. */
  readonly bay_m: number;
  readonly screw: string;
  readonly screws_per_end: number;
  /** Thickness of the stringer that the screws go through [m]. */
  readonly side_m: number;
}

/** Reactions of one module end: what all its stringers bring, and what the most loaded one does. */
const total = (pattern: BeamPattern, key: "dead_n" | "live_n"): number =>
  pattern.loads.reduce((sum, l) => sum + l[key], 0);

function bendingEffects(piece: JointPiece, patterns: readonly BeamPattern[]): PatternEffect[] {
  const L = metres(piece.bay_m);
  return patterns.map((pattern) => ({
    pattern: {
      ...pattern,
      explain: (trace) => {
        pattern.explain(trace);
        spreadMoment({ N: newtons(total(pattern, "live_n")), L }, trace, "live load of the module's end");
      },
    },
    effect: {
      dead: spreadMoment({ N: newtons(total(pattern, "dead_n")), L }),
      live: spreadMoment({ N: newtons(total(pattern, "live_n")), L }),
      where: "the next module's end spread over one bay",
    },
  }));
}

/** The end of the most loaded stringer on one end of the piece. */
export const endEffects = (patterns: readonly BeamPattern[]): PatternEffect[] =>
  patterns.flatMap((pattern) =>
    pattern.loads.map((l, i) => ({
      pattern,
      effect: { dead: l.dead_n, live: l.live_n, where: `stringer ${i + 1} of the next module` },
    })),
  );

/** Bending and shear of a catch board flat across its bay under the next module's largest end reaction. */
export function checkCatchBoard(
  board: JointPiece,
  patterns: readonly BeamPattern[],
  baseOf: (part: "bending" | "shear") => CheckBase,
  context: CheckContext,
): CheckResult[] {
  return (["bending", "shear"] as const).map((part) => {
    const effects = part === "bending" ? bendingEffects(board, patterns) : endEffects(patterns);
    const subject = {
      part,
      lay: "flat",
      size: board.size,
      lumber: board.lumber,
      unbraced_m: board.bay_m,
    } as const;
    const change = (passes: (size: string) => boolean): string => {
      const stouter = stouterSizes(context.tables.sizes, board.size).find((s) => passes(s.id));
      return stouter
        ? `Would pass with ${stouter.id} laid flat.`
        : "No stouter size of the table passes: use a plain end, and let both modules lie on the sill.";
    };
    return checkMember(subject, effects, baseOf(part), board.name, change, context);
  });
}

/** Lateral capacity of so many screws through a stringer into the end grain of a piece [N], and how they fail. */
function endGrain(piece: JointPiece, count: number, context: CheckContext, trace?: Trace) {
  const { tables, code } = context;
  const { species, grade } = piece.lumber;
  const member = code.member(tables, species, grade, piece.size);
  if (!member.ok) return { missing: missingOf(member.problems) };
  const fastener = tables.fasteners.find((f) => f.id === piece.screw);
  if (!fastener) return { missing: [`a screw of the fastener table instead of "${piece.screw}"`] };
  const joint: FastenerJoint = {
    fastener,
    count,
    per_row: 1,
    side: code.woodPiece(member.value, piece.side_m),
    main: code.woodPiece(member.value, fastener.length_mm / 1000),
    shear: "single",
    grain: "end",
    toe_nail: false,
    moisture: "wet",
    duration: liveCombination(code).duration,
    short_reach: "equations",
    predrilled: fastener.diameter_mm > 6,
    rope: false,
    hole: freshHole,
  };
  const found = code.fasteners.lateral(joint, trace);
  return found.ok ? found.value : { missing: missingOf(found.problems) };
}

/** Most screws that the answer speaks of in one end. */
const MOST_SCREWS = 8;

/** Screws of one end of a piece at a joint, in end grain, under one stringer's end of the next module. */
export function checkJointScrews(
  piece: JointPiece,
  patterns: readonly BeamPattern[],
  base: CheckBase,
  context: CheckContext,
): CheckResult {
  const combination = liveCombination(context.code);
  const worst = endEffects(patterns)
    .map((one) => ({
      ...one,
      N: forceDemand(combination, qty(one.effect.dead, "N"), qty(one.effect.live, "N")),
    }))
    .reduce((a, b) => (b.N > a.N ? b : a));
  const working: Trace = [];
  worst.pattern.explain(working);
  const { dead, live, where } = worst.effect;
  const demand = forceDemand(combination, qty(dead, "N"), qty(live, "N"), working, worst.pattern.name);
  const found = endGrain(piece, piece.screws_per_end, context, working);
  if ("missing" in found) return cannotCheck(base, found.missing);
  const capacity = found.value;
  const each = capacity / piece.screws_per_end;
  const count = each > 0 ? Math.ceil(demand / each - 1e-9) : Infinity;
  return resultOf(
    { ...base, caution: `${base.caution} ${GRADE}` },
    { unit: "N", demand, capacity, governs: `${worst.pattern.name}; ${where}; ${found.governs}`, working },
    {
      carries: `The ${piece.screws_per_end} screws of one end carry ${showQuantity(capacity, "N", context.units)}${found.reason === null ? "" : `: ${found.reason}`}.`,
      change:
        demand <= capacity
          ? null
          : count <= MOST_SCREWS
            ? `Would pass with ${count} screws at each end, where they have room without splitting it, or with a cleat below it.`
            : "No screws that fit pass: carry it on a cleat fixed to the stringer.",
    },
  );
}
