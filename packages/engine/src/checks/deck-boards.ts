import { M_PER_IN } from "../units/index.ts";
import type { CheckContext } from "./input.ts";
import { edgeCases, pieceCases } from "./piece-cases.ts";
import { checkPiece, type PieceChange, type PieceLabel } from "./piece-check.ts";
import type { Piece } from "./piece.ts";
import { cartsThatDoNotFit } from "./stringer-check.ts";
import { ruleEdgeCases, rulePieceCases } from "./rule-pieces.ts";
import { cannotCheck } from "./result.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import type { WalkDemand } from "./walk-demand.ts";

/** A deck of boards laid flat across the stringers. */
export interface BoardDeckSetup {
  /** `span_m` is the distance of neighbouring stringers, centre to centre. */
  readonly board: Piece;
  readonly clear_width_m: number;
  /** Outside to outside of the stringers [m]. */
  readonly overall_m: number;
  readonly stringers: number;
  /** Deck along the walkway that one board carries under a load all over [m]; its own width when left out. */
  readonly along_m?: number;
}

/**
 * Bending and deflection of one board alone: foot or axle between two stringers, foot or wheel on the overhang.
 * The foot stands on a contact length of 2.5 in; boards are taken as simple spans.
 */
export function checkDeckBoards(
  deck: BoardDeckSetup,
  demands: readonly WalkDemand[],
  label: PieceLabel,
  context: CheckContext,
): CheckResult[] {
  const misfits = cartsThatDoNotFit(deck.clear_width_m, demands, context);
  if (misfits.length > 0) return [cannotCheck(baseOf(label, context), misfits)];
  const width = context.tables.sizes.find((s) => s.id === deck.board.size)?.width_in ?? 0;
  const along_m = deck.along_m ?? width * M_PER_IN;
  const cases = [
    ...pieceCases(demands, context.units, true),
    ...edgeCases(demands, context.units, deck.clear_width_m, deck.overall_m),
    ...rulePieceCases(context, true, along_m),
    ...ruleEdgeCases(context, deck.clear_width_m, deck.overall_m, along_m),
  ];
  const closer: PieceChange[] =
    deck.stringers === 2
      ? [{ words: "a third stringer", piece: { ...deck.board, span_m: deck.board.span_m / 2 } }]
      : [];
  return [
    checkPiece("bending", deck.board, cases, closer, label, context),
    checkPiece("deflection", deck.board, cases, closer, label, context),
  ];
}

const baseOf = (label: PieceLabel, { code }: CheckContext): CheckBase => ({
  id: label.id,
  kind: label.kind,
  title: label.name,
  parts: label.parts,
  rule: code.rule("bending"),
  caution: "The cart must fit on the deck before anything else can be said.",
});
