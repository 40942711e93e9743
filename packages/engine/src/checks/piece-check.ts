import { showQuantity } from "../units/index.ts";
import { GRADE, STAFF_ACCESS } from "./cautions.ts";
import type { CheckContext } from "./input.ts";
import type { PieceCase } from "./piece-cases.ts";
import {
  pieceModel,
  piecePasses,
  pieceVerdict,
  pieceDemand,
  stouterSizes,
  type Piece,
  type PieceCheck,
  type PieceModel,
} from "./piece.ts";
import { cannotCheck, missingOf, resultOf } from "./result.ts";
import { deflectionLimit } from "./rules.ts";
import type { Backwards, CheckBase, CheckKind, CheckResult } from "./types.ts";

/** Under which name a piece's result appears. */
export interface PieceLabel {
  readonly id: string;
  readonly kind: CheckKind;
  /** "Cross piece 2x4 flat, module", "Deck board 5/4x6". */
  readonly name: string;
  readonly parts: readonly string[];
}

/** A change of the recipe besides a stouter size, with the piece it would give. */
export interface PieceChange {
  readonly words: string;
  readonly piece: Piece;
}

/** What the code says of this very piece, such as a board thinner than its tables cover. */
function cautionOf({ size, lumber }: Piece, { tables, code }: CheckContext): string {
  const member = code.member(tables, lumber.species, lumber.grade, size);
  return member.ok && member.value.caution !== null ? `${member.value.caution} ` : "";
}

const baseOf = (check: PieceCheck, piece: Piece, label: PieceLabel, context: CheckContext): CheckBase => ({
  id: `${label.id}.${check}`,
  kind: label.kind,
  title: `${label.name}: ${check}`,
  parts: label.parts,
  rule: check === "deflection" ? deflectionLimit.spec.source : context.code.rule(check),
  caution: `One piece alone takes the load: nothing is shared with its neighbours. ${cautionOf(piece, context)}${STAFF_ACCESS} ${GRADE}`,
});

/** Bending, shear or deflection of one cross piece or board under a foot or an axle. */
export function checkPiece(
  check: PieceCheck,
  piece: Piece,
  cases: readonly PieceCase[],
  changes: readonly PieceChange[],
  label: PieceLabel,
  context: CheckContext,
): CheckResult {
  const base = baseOf(check, piece, label, context);
  const model = pieceModel(piece, context);
  if (!model.ok) return cannotCheck(base, missingOf(model.problems));
  const verdict = pieceVerdict(check, model.value, cases, context);
  return resultOf(base, verdict, backwardsOf(check, model.value, cases, changes, context));
}

function backwardsOf(
  check: PieceCheck,
  model: PieceModel,
  cases: readonly PieceCase[],
  changes: readonly PieceChange[],
  context: CheckContext,
): Backwards {
  const isFine = piecePasses(check, model, cases);
  const foot = cases[0]!;
  const allowed = (foot.load * model.capacity[check]) / pieceDemand(check, model, foot);
  const carries = `Carries one foot of at most ${showQuantity(allowed, "N", context.units)} on one piece.`;
  return { carries, change: isFine ? null : changeText(check, model, cases, changes, context) };
}

function changeText(
  check: PieceCheck,
  { piece }: PieceModel,
  cases: readonly PieceCase[],
  changes: readonly PieceChange[],
  context: CheckContext,
): string {
  const works = (p: Piece): boolean => {
    const model = pieceModel(p, context);
    return model.ok && piecePasses(check, model.value, cases);
  };
  const stouter = stouterSizes(context.tables.sizes, piece.size).find((s) => works({ ...piece, size: s.id }));
  const words = [
    ...(stouter ? [`${stouter.id} laid ${piece.lay}`] : []),
    ...changes.filter((c) => works(c.piece)).map((c) => c.words),
  ];
  if (words.length > 0) return `Would pass with ${words.join(", or ")}.`;
  return "No ordinary change of this piece passes: set the stringers closer, or ask an engineer.";
}
