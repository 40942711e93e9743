import type { Combination, Found, Member, Situation, Strengths } from "../codes/index.ts";
import type { Trace } from "../formula/index.ts";
import { sameYard, type LumberSize } from "../materials/index.ts";
import { rectangleArea, rectangleInertia, rectangleSectionModulus } from "../structure/index.ts";
import { inches, metres, newtons, qty, type Qty } from "../units/index.ts";
import { recordLimit } from "./area-load.ts";
import { forceDemand, liveCombination, momentDemand } from "./combination.ts";
import { allowedDeflection, momentCapacity, shearCapacity } from "./formulas.ts";
import type { CheckContext, GradedLumber } from "./input.ts";
import type { PieceCase } from "./piece-cases.ts";
import type { Verdict } from "./result.ts";
import { deflectionLimit } from "./rules.ts";

/** A cross piece or a deck board: one piece on its own between two stringers. */
export interface Piece {
  readonly size: string;
  readonly lay: "flat" | "edge";
  /** [m] */
  readonly span_m: number;
  readonly lumber: GradedLumber;
}

export type PieceCheck = "bending" | "shear" | "deflection";

/** A piece with its strengths and section worked out once. */
export interface PieceModel {
  readonly piece: Piece;
  readonly member: Member;
  /** Loads with their factors, and the duration that the strengths are for. */
  readonly combination: Combination;
  readonly strengths: Strengths;
  readonly section: { readonly b: Qty<"m">; readonly d: Qty<"m"> };
  readonly capacity: Readonly<Record<PieceCheck, number>>;
  readonly stiffness: number;
}

const situationOf = (piece: Piece, { duration }: Combination): Situation => ({
  use: piece.lay,
  wet: true,
  incised: piece.lumber.incised,
  repetitive: false,
  duration,
  ...(piece.lay === "edge" ? { unbraced_m: piece.span_m } : {}),
});

const sectionOf = (size: LumberSize, lay: "flat" | "edge"): PieceModel["section"] => {
  const [t, w] = [inches(size.thickness_in), inches(size.width_in)];
  return lay === "flat" ? { b: w, d: t } : { b: t, d: w };
};

/** Looks up the timber; one piece alone, wet, its own weight left out as under 2 % of the load. */
export function pieceModel(piece: Piece, { tables, code }: CheckContext): Found<PieceModel> {
  const { species, grade } = piece.lumber;
  const found = code.member(tables, species, grade, piece.size);
  if (!found.ok) return found;
  const combination = liveCombination(code);
  const strengths = code.strength(found.value, situationOf(piece, combination));
  const section = sectionOf(found.value.size, piece.lay);
  const L = metres(piece.span_m);
  const capacity = {
    bending: momentCapacity({ F: strengths.fb, S: rectangleSectionModulus(section) }),
    shear: shearCapacity({ F: strengths.fv, A: rectangleArea(section) }),
    deflection: allowedDeflection({ L, n: deflectionLimit({}) }),
  };
  const stiffness = strengths.e * rectangleInertia(section);
  return {
    ok: true,
    value: { piece, member: found.value, combination, strengths, section, capacity, stiffness },
  };
}

/** Demand of one case with the load factors on strengths, without them on deflection [N*m, N or m]. */
export function pieceDemand(check: PieceCheck, model: PieceModel, load: PieceCase, trace?: Trace): number {
  const L = metres(model.piece.span_m);
  const { combination: c } = model;
  if (check === "bending") return momentDemand(c, qty(0, "N*m"), load.moment(L, trace), trace, load.name);
  if (check === "shear") return forceDemand(c, newtons(0), load.reaction(L, trace), trace, load.name);
  return load.deflectionTimesStiffness(L) / model.stiffness;
}

/** What may be asked under a case: a deflection by the case's own limit where it has one [N*m, N or m]. */
const capacityUnder = (
  check: PieceCheck,
  { capacity, piece }: PieceModel,
  { span_over }: PieceCase,
): number => (check === "deflection" && span_over !== undefined ? piece.span_m / span_over : capacity[check]);

export function governingCase(check: PieceCheck, model: PieceModel, cases: readonly PieceCase[]): PieceCase {
  const use = (load: PieceCase): number =>
    pieceDemand(check, model, load) / capacityUnder(check, model, load);
  return cases.reduce((a, b) => (use(b) > use(a) ? b : a));
}

export const piecePasses = (check: PieceCheck, model: PieceModel, cases: readonly PieceCase[]): boolean =>
  cases.every((load) => pieceDemand(check, model, load) <= capacityUnder(check, model, load));

/** The verdict under the governing case, with its whole working. */
export function pieceVerdict(
  check: PieceCheck,
  model: PieceModel,
  cases: readonly PieceCase[],
  { code }: CheckContext,
): Verdict {
  const working: Trace = [];
  const load = governingCase(check, model, cases);
  load.explain(working);
  const demand = pieceDemand(check, model, load, working);
  const wanted = { bending: "fb", shear: "fv", deflection: "e" } as const;
  const { fb, fv } = code.strength(model.member, situationOf(model.piece, model.combination), working, [
    wanted[check],
  ]);
  const governs = load.name;
  if (check === "bending") {
    const S = rectangleSectionModulus(model.section, working);
    return {
      unit: "N*m",
      demand: qty(demand, "N*m"),
      capacity: momentCapacity({ F: fb, S }, working),
      governs,
      working,
    };
  }
  if (check === "shear") {
    const A = rectangleArea(model.section, working);
    return {
      unit: "N",
      demand: qty(demand, "N"),
      capacity: shearCapacity({ F: fv, A }, working),
      governs,
      working,
    };
  }
  rectangleInertia(model.section, working);
  const limit = { L: metres(model.piece.span_m), n: recordLimit(load, working) };
  return {
    unit: "m",
    demand: qty(demand, "m"),
    capacity: allowedDeflection(limit, working),
    governs,
    working,
  };
}

/** Sizes of the same yard that are nowhere thinner or narrower, the smallest section first, up to 4 in thick. */
export function stouterSizes(sizes: readonly LumberSize[], id: string): LumberSize[] {
  const own = sizes.find((s) => s.id === id);
  if (!own) return [];
  const area = (s: LumberSize): number => s.thickness_in * s.width_in;
  return sizes
    .filter((s) => s.thickness_in >= own.thickness_in && s.width_in >= own.width_in && area(s) > area(own))
    .filter((s) => sameYard(s, own) && (s.nominal_thickness_in ?? s.thickness_in) <= 4)
    .sort((a, b) => area(a) - area(b));
}
