import { clausesOf } from "../codes/index.ts";
import { inputProblem, type Calculation, type JsonObject } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { checkCrossPiece, type CrossPiece } from "./cross-piece.ts";
import { checkDeckBoards } from "./deck-boards.ts";
import { checkDeckMesh } from "./deck-mesh.ts";
import {
  demandFields,
  demandFrom,
  lumberFields,
  lumberFrom,
  number,
  optional,
  text,
} from "./method-fields.ts";
import { checkMethod } from "./method-results.ts";
import type { Piece } from "./piece.ts";
import { footPatch, pointLoad } from "./rules.ts";

const metre = (input: JsonObject, key: string): number => (input[key] as number) / 1000;

function crossPieceFrom(input: JsonObject): CrossPiece {
  return {
    size: input["size"] as string,
    lay: input["lay"] as Piece["lay"],
    span_m: metre(input, "clear_span_mm"),
    lumber: lumberFrom(input),
    screw: input["screw"] as string,
    screws_per_end: input["screws_per_end"] as number,
    side_m: metre(input, "stringer_thickness_mm"),
  };
}

const crossPieceCalculation = checkMethod(
  {
    id: "check.cross-piece",
    title: "Check of a cross piece and the screws at its ends",
    inputs: [
      ...lumberFields,
      text("size", "Size of the cross piece"),
      text("lay", "How it lies", ["flat", "edge"]),
      number("clear_span_mm", "Clear distance between the stringers", 10, 10_000),
      text("screw", "Screw of the fastener table"),
      { key: "screws_per_end", title: "Screws at each end", type: "integer", min: 1, max: 20 },
      number("stringer_thickness_mm", "Thickness of the stringer", 5, 200),
      ...demandFields,
    ],
    validity:
      "One piece alone between two stringers, simple span, wet service, screws in end grain, own weight left out.",
    sources: [...clausesOf("bending", "shear", "screws"), pointLoad.spec.source],
  },
  (input, context) => {
    const piece = crossPieceFrom(input);
    const member = context.code.member(context.tables, piece.lumber.species, piece.lumber.grade, piece.size);
    if (!member.ok) return { problems: member.problems };
    const label = {
      id: "cross-piece",
      kind: "cross-piece",
      name: `Cross piece ${piece.size}`,
      parts: [],
    } as const;
    return checkCrossPiece(piece, [demandFrom(input)], label, context);
  },
);

const boardFields = [
  text("size", "Size of the boards; left out for mesh"),
  number("stringer_distance_mm", "Neighbouring stringers, centre to centre", 10, 10_000),
  number("overall_mm", "Outside to outside of the stringers", 50, 20_000),
  { key: "stringers", title: "Number of stringers", type: "integer", min: 2, max: 12 } as const,
].map(optional);
const meshFields = [
  number("wire_mm", "Diameter of the wire; left out for boards", 0.5, 20),
  number("pitch_mm", "Distance of the strands", 1, 500),
  number("yield_mpa", "Yield strength of the wire", 50, 3000),
  number("strand_span_mm", "Clear span of the strands", 10, 10_000),
  text("clip", "Name of the clip"),
].map(optional);

const missing = (input: JsonObject, fields: readonly { readonly key: string; readonly title: string }[]) =>
  fields
    .filter((f) => input[f.key] === undefined)
    .map((f) => inputProblem(f.key, undefined, `${f.title} is missing`, `Give "${f.key}".`));

const deckCalculation = checkMethod(
  {
    id: "check.deck",
    title: "Check of a deck of boards or mesh",
    inputs: [
      ...lumberFields,
      number("clear_width_mm", "Clear width of the deck", 50, 20_000),
      ...boardFields,
      ...meshFields,
      ...demandFields,
    ],
    validity:
      "One board alone, simple span between stringers; or mesh strands one way, elastic, ends that do not slip.",
    sources: [...clausesOf("bending", "deflection"), pointLoad.spec.source, footPatch.spec.source],
  },
  (input, context) => {
    const demands = [demandFrom(input)];
    if (input["wire_mm"] !== undefined) {
      const problems = missing(input, meshFields);
      if (problems.length > 0) return { problems };
      const mesh = {
        wire_m: metre(input, "wire_mm"),
        pitch_m: metre(input, "pitch_mm"),
        yield_pa: (input["yield_mpa"] as number) * 1e6,
        span_m: metre(input, "strand_span_mm"),
        clip: input["clip"] as string,
      };
      return checkDeckMesh(
        mesh,
        demands,
        { id: "deck", kind: "deck", name: "Mesh deck", parts: [] },
        context,
      );
    }
    const problems = missing(input, boardFields);
    if (problems.length > 0) return { problems };
    const lumber = lumberFrom(input);
    const size = input["size"] as string;
    const member = context.code.member(context.tables, lumber.species, lumber.grade, size);
    if (!member.ok) return { problems: member.problems };
    const deck = {
      board: { size, lay: "flat", span_m: metre(input, "stringer_distance_mm"), lumber },
      clear_width_m: metre(input, "clear_width_mm"),
      overall_m: metre(input, "overall_mm"),
      stringers: input["stringers"] as number,
    } as const;
    return checkDeckBoards(
      deck,
      demands,
      { id: "deck", kind: "deck", name: `Deck board ${size}`, parts: [] },
      context,
    );
  },
);

export const pieceCalculations: readonly Calculation<CalcContext>[] = [
  crossPieceCalculation,
  deckCalculation,
];
