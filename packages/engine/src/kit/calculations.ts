import {
  defineMethod,
  type Calculation,
  type Field,
  type Json,
  type JsonObject,
  type Problem,
  type Source,
} from "../formula/index.ts";
import type { CalcContext } from "../materials/context.ts";
import { moduleCounts } from "./counts.ts";
import { sameLength } from "./cross-places.ts";
import { sheetWidth } from "./deck.ts";
import { moduleDrawing } from "./drawing.ts";
import { kitGeometry } from "./geometry.ts";
import { readKit } from "./kit-shape.ts";
import { modulePieces } from "./module-pieces.ts";
import { isPanelDeck } from "./panels.ts";
import { pieceVolume, type PlacedPiece } from "./piece.ts";
import type { Kit } from "./types.ts";
import { validateKit } from "./validate.ts";

const carpentry: Source = {
  id: "causey-kit",
  title: "Project method: pieces placed as boxes from the kit's recipe (docs/methods/kit.md)",
  status: "project",
};
const kitField: Field = { key: "kit", title: "Kit recipe", type: "object" };

/** The kit of an input, held against the tables; problems instead when it cannot be built. */
function kitOf(
  input: JsonObject,
  context: CalcContext,
): { readonly kit: Kit } | { readonly problems: readonly Problem[] } {
  const read = readKit(input["kit"] as Json);
  if ("problems" in read) return read;
  const faults = validateKit(read.kit, context.tables).filter((p) => p.severity === "error");
  const problems = faults.map((p) => ({ ...p, file: "input" }));
  return problems.length > 0 ? { problems } : read;
}

const moduleMethod = defineMethod<CalcContext>(
  {
    id: "kit.module",
    title: "Pieces, screws and mass of one module of a kit",
    inputs: [kitField, { key: "length_mm", title: "Body length of the module", type: "number", min: 1 }],
    outputs: [
      { key: "pieces", title: "Pieces as boxes in the module's own frame, in metres", type: "array" },
      { key: "counted", title: "Screws, clips, mesh sheets and panels", type: "array" },
      { key: "timber_m3", title: "Timber volume", type: "number" },
      { key: "mesh_kg", title: "Mass of the mesh", type: "number" },
      { key: "panel_kg", title: "Mass of the panels, dry", type: "number" },
    ],
    validity: "Kits without faults; actual lumber sizes of the tables; bends of the mesh without allowance.",
    sources: [carpentry],
  },
  (input, context) => {
    const found = kitOf(input, context);
    if ("problems" in found) return found;
    const { kit } = found;
    const length = kit.lengths_mm.find((l) => sameLength(l, input["length_mm"] as number));
    if (length === undefined) return { problems: [lengthProblem(kit, input["length_mm"] as number)] };
    const { sizes, fasteners } = context.tables;
    const pieces = modulePieces(kit, length, sizes);
    return {
      pieces: pieces.map((p) => ({ ...p })),
      counted: moduleCounts(kit, length, sizes, fasteners).map((c) => ({ ...c })),
      timber_m3: pieces.filter((p) => p.size !== null).reduce((sum, p) => sum + pieceVolume(p), 0),
      mesh_kg: kit.deck.kind === "mesh" ? ((length * sheetWidth(kit.deck)) / 1e6) * kit.deck.mass_kg_m2 : 0,
      panel_kg: panelMass(kit, pieces),
    };
  },
);

const panelMass = ({ deck }: Kit, pieces: readonly PlacedPiece[]): number =>
  isPanelDeck(deck)
    ? pieces
        .filter((p) => p.role === "deck panel")
        .reduce((sum, p) => sum + (p.x1 - p.x0) * (p.y1 - p.y0) * deck.mass_kg_m2, 0)
    : 0;

const lengthProblem = (kit: Kit, length_mm: number): Problem => ({
  code: "input",
  severity: "error",
  file: "input",
  place: "length_mm",
  value: String(length_mm),
  message: "the kit has no module of this length",
  mend: `Give one of: ${kit.lengths_mm.join(", ")}.`,
});

const drawingMethod = defineMethod<CalcContext>(
  {
    id: "kit.drawing",
    title: "Plan, side and end of one module, its dimensions and the place of every screw",
    inputs: [kitField, { key: "length_mm", title: "Body length of the module", type: "number", min: 1 }],
    outputs: [
      { key: "plan", title: "Pieces seen from above, in millimetres", type: "array" },
      { key: "side", title: "Pieces seen from the right of travel", type: "array" },
      { key: "end", title: "Pieces seen as one walks towards them", type: "array" },
      { key: "chains", title: "Rows of dimensions along, across and up", type: "array" },
      { key: "screws", title: "Every screw and clip at its place", type: "array" },
    ],
    validity:
      "Kits without faults; screw places are where the recipe's counts fall, not where the grain allows.",
    sources: [carpentry],
  },
  (input, context) => {
    const found = kitOf(input, context);
    if ("problems" in found) return found;
    const { kit } = found;
    const length = kit.lengths_mm.find((l) => sameLength(l, input["length_mm"] as number));
    if (length === undefined) return { problems: [lengthProblem(kit, input["length_mm"] as number)] };
    const { plan, side, end, chains, screws } = moduleDrawing(kit, length, context.tables.sizes);
    return {
      plan: plan.map((p) => ({ ...p })),
      side: side.map((p) => ({ ...p })),
      end: end.map((p) => ({ ...p })),
      chains: chains.map((c) => ({ ...c, at_mm: [...c.at_mm] })),
      screws: screws.map((s) => ({ ...s })),
    };
  },
);

const geometryMethod = defineMethod<CalcContext>(
  {
    id: "kit.geometry",
    title: "Lattice step, pitches, depth and widths of a kit",
    inputs: [kitField],
    outputs: [
      { key: "lattice_mm", title: "Lattice step", type: "number" },
      { key: "pitches_mm", title: "Pitch of each module length", type: "array" },
      { key: "platform_pitch_mm", title: "Pitch over a platform", type: "number" },
      { key: "module_depth_mm", title: "Underside to top of deck", type: "number" },
      { key: "deck_width_mm", title: "Widest outline across", type: "number" },
      { key: "clear_width_mm", title: "Clear width for feet and wheels", type: "number" },
      { key: "deck_thickness_mm", title: "Thickness of the deck", type: "number" },
    ],
    validity: "Kits without faults; lengths to a tenth of a millimetre.",
    sources: [carpentry],
  },
  (input, context) => {
    const found = kitOf(input, context);
    if ("problems" in found) return found;
    const g = kitGeometry(found.kit, context.tables.sizes);
    const mm = (m: number): number => Math.round(m * 1e5) / 100;
    return {
      lattice_mm: mm(g.lattice_m),
      pitches_mm: found.kit.lengths_mm.map((l) => mm(g.pitch_m(l))),
      platform_pitch_mm: mm(g.platform_pitch_m),
      module_depth_mm: mm(g.module_depth_m),
      deck_width_mm: mm(g.deck_width_m),
      clear_width_mm: mm(g.clear_width_m),
      deck_thickness_mm: mm(g.deck_thickness_m),
    };
  },
);

const problemsMethod = defineMethod<CalcContext>(
  {
    id: "kit.problems",
    title: "Every fault of a kit's recipe, with its place and how to mend it",
    inputs: [kitField],
    outputs: [{ key: "problems_found", title: "Faults, errors and warnings", type: "array" }],
    validity: "Carpentry and lattice alone: whether the kit carries a load is for the checks.",
    sources: [carpentry],
  },
  (input, context) => {
    const read = readKit(input["kit"] as Json);
    if ("problems" in read) return read;
    return { problems_found: validateKit(read.kit, context.tables).map((p) => ({ ...p })) };
  },
);

/** Registered methods of the kit. */
export const kitCalculations: readonly Calculation<CalcContext>[] = [
  moduleMethod,
  drawingMethod,
  geometryMethod,
  problemsMethod,
];
