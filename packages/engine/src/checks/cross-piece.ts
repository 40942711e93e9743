import { freshHole, type FastenerJoint } from "../codes/index.ts";
import type { LumberSize } from "../materials/index.ts";
import type { Peak } from "../module-frame/index.ts";
import { M_PER_IN, metres, millimetres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import type { Trace } from "../formula/index.ts";
import { GRADE } from "./cautions.ts";
import { forceDemand, liveCombination } from "./combination.ts";
import type { Frame } from "./frame.ts";
import { recordPeak } from "./frame-working.ts";
import type { CheckContext } from "./input.ts";
import { checkPiece, type PieceChange, type PieceLabel } from "./piece-check.ts";
import { pieceCases, type PieceCase } from "./piece-cases.ts";
import type { Piece } from "./piece.ts";
import { rulePieceCases } from "./rule-pieces.ts";
import { cannotCheck, missingOf, resultOf } from "./result.ts";
import type { Backwards, CheckBase, CheckResult } from "./types.ts";
import type { WalkDemand } from "./walk-demand.ts";

/** A cross piece between two stringers with the screws that hold its ends. */
export interface CrossPiece extends Piece {
  readonly screw: string;
  readonly screws_per_end: number;
  /** Thickness of the stringer that the screws go through [m]. */
  readonly side_m: number;
  /** Largest shear of a cross piece in the frame with stiff joints, where that is known. */
  readonly stiff_shear?: Peak | null;
  /** Deck along the walkway that it carries under a load all over [m]; its own width when left out. */
  readonly along_m?: number;
}

/**
 * Bending and shear of a cross piece as a simple span between stringers, and its screws: wood screws through the
 * stringer into end grain, in lateral shear, wet. One foot at the middle, or both wheels of an axle.
 */
export function checkCrossPiece(
  piece: CrossPiece,
  demands: readonly WalkDemand[],
  label: PieceLabel,
  context: CheckContext,
): CheckResult[] {
  const width = (context.tables.sizes.find((s) => s.id === piece.size)?.width_in ?? 0) * M_PER_IN;
  const cases = [
    ...pieceCases(demands, context.units, false),
    ...rulePieceCases(context, false, piece.along_m ?? width),
  ];
  const changes: PieceChange[] =
    piece.lay === "flat" ? [{ words: `${piece.size} laid on edge`, piece: { ...piece, lay: "edge" } }] : [];
  return [
    checkPiece("bending", piece, cases, changes, label, context),
    checkPiece("shear", piece, cases, changes, label, context),
    checkScrews(piece, cases, label, context),
  ];
}

function checkScrews(
  piece: CrossPiece,
  cases: readonly PieceCase[],
  label: PieceLabel,
  context: CheckContext,
): CheckResult {
  const base: CheckBase = {
    id: `${label.id}.screws`,
    kind: label.kind,
    title: `${label.name}: screws at its ends`,
    parts: label.parts,
    rule: context.code.rule("screws"),
    caution: `Screws in end grain, spaced so that the wood does not split, stainless or hot-dip galvanised. Withdrawal from end grain has no design value. ${GRADE}`,
  };
  const lateral = screwsOf(piece, context);
  if (!lateral.ok) return cannotCheck(base, lateral.missing);
  const span = metres(piece.span_m);
  const load = cases.reduce((a, b) => (b.reaction(span) > a.reaction(span) ? b : a));
  const working: Trace = [];
  const { demand, governs } = screwDemand(piece, load, context, working);
  const { capacity, mode } = lateral.value(piece.screws_per_end, working);
  const verdict = {
    unit: "N",
    demand,
    capacity: qty(capacity, "N"),
    governs: `${governs}; ${mode}`,
    working,
  } as const;
  return resultOf(base, verdict, screwBackwards(piece, demand, capacity, context));
}

/** Shear at the end of the piece: as a simple span, or in the frame with its joints stiff where that asks for more. */
function screwDemand(
  piece: CrossPiece,
  load: PieceCase,
  { code }: CheckContext,
  working: Trace,
): { readonly demand: Qty<"N">; readonly governs: string } {
  const combination = liveCombination(code);
  const simple = load.reaction(metres(piece.span_m));
  const peak = piece.stiff_shear ?? null;
  if (peak && peak.value > simple * (1 + 1e-9)) {
    const own = recordPeak(working, "V_d", "Shear of own weight there", peak.own, "N", peak);
    const live = recordPeak(
      working,
      "V_l",
      "Largest live shear in the frame",
      peak.value - peak.own,
      "N",
      peak,
    );
    const governs = `${peak.load.name}; cross pieces taken as stiff`;
    return { demand: forceDemand(combination, own, live, working), governs };
  }
  load.explain(working);
  const live = load.reaction(metres(piece.span_m), working);
  return { demand: forceDemand(combination, newtons(0), live, working, load.name), governs: load.name };
}

type Lateral = (count: number, trace?: Trace) => { readonly capacity: number; readonly mode: string };

function screwsOf(
  piece: CrossPiece,
  { tables, code, used }: CheckContext,
): { ok: true; value: Lateral } | { ok: false; missing: string[] } {
  const member = code.member(tables, piece.lumber.species, piece.lumber.grade, piece.size);
  if (!member.ok) return { ok: false, missing: missingOf(member.problems) };
  const screw = tables.fasteners.find((f) => f.id === piece.screw);
  if (!screw) {
    const known = tables.fasteners.filter((f) => f.kind === "wood-screw").map((f) => f.id);
    return {
      ok: false,
      missing: [`a screw of the fastener table instead of "${piece.screw}": ${known.join(", ")}`],
    };
  }
  const { duration } = liveCombination(code);
  const main = code.woodPiece(member.value, screw.length_mm / 1000);
  const joint = (count: number): FastenerJoint => ({
    fastener: screw,
    count,
    per_row: 1,
    side: code.woodPiece(member.value, piece.side_m),
    main,
    shear: "single",
    grain: "end",
    toe_nail: false,
    moisture: "wet",
    duration,
    short_reach: "equations",
    predrilled: screw.diameter_mm > 6,
    rope: false,
    hole: used?.hole ?? freshHole,
  });
  const first = code.fasteners.lateral(joint(1));
  if (!first.ok) return { ok: false, missing: missingOf(first.problems) };
  const value: Lateral = (count, trace) => {
    const found = code.fasteners.lateral(joint(count), trace);
    return found.ok
      ? { capacity: found.value.value, mode: found.value.governs }
      : { capacity: 0, mode: "no value" };
  };
  return { ok: true, value };
}

/** Screws that fit in one row on the end of a piece without splitting it: 5 diameters apart, 2.5 from the edges. */
function roomForScrews(piece: CrossPiece, { tables }: CheckContext): number {
  const width = (tables.sizes.find((s) => s.id === piece.size)?.width_in ?? 0) * 25.4;
  const pitch = 5 * (tables.fasteners.find((f) => f.id === piece.screw)?.diameter_mm ?? Infinity);
  return Math.floor(width / pitch + 1e-9);
}

function screwBackwards(
  piece: CrossPiece,
  demand: number,
  capacity: number,
  context: CheckContext,
): Backwards {
  const carries = `The ${piece.screws_per_end} screws of one end carry ${showQuantity(capacity, "N", context.units)}.`;
  if (demand <= capacity) return { carries, change: null };
  const each = capacity / piece.screws_per_end;
  const count = each > 0 ? Math.ceil(demand / each - 1e-9) : Infinity;
  const words = [
    ...(count <= roomForScrews(piece, context) ? [`${count} screws at each end`] : []),
    ...stouterScrew(piece, demand, context),
  ];
  const change =
    words.length > 0
      ? `Would pass with ${words.join(", or ")}.`
      : "No screws that fit on this end pass: carry the cross piece on a cleat fixed to the stringer.";
  return { carries, change };
}

/** The first screw of the table, by diameter and then length, that passes with the same count. */
function stouterScrew(piece: CrossPiece, demand: number, context: CheckContext): string[] {
  const screws = context.tables.fasteners
    .filter((f) => f.kind === "wood-screw" && f.id !== piece.screw)
    .sort((a, b) => a.diameter_mm - b.diameter_mm || a.length_mm - b.length_mm);
  const works = screws.find((f) => {
    const lateral = screwsOf({ ...piece, screw: f.id }, context);
    return lateral.ok && lateral.value(piece.screws_per_end).capacity >= demand;
  });
  return works ? [`${works.name} (${works.id})`] : [];
}

/** Widest clear space between neighbouring stringers of a frame [m]. */
export const widestBay = ({ positions_m: p }: Frame, stringer: LumberSize): number =>
  Math.max(...p.slice(1).map((x, i) => x - p[i]!)) - millimetres(stringer.thickness_in * 25.4);
