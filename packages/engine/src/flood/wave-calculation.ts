import {
  defineMethod,
  type Calculation,
  type Json,
  type JsonObject,
  type Problem,
  type Trace,
} from "../formula/index.ts";
import { metres, qty } from "../units/index.ts";
import { any, choice, figure, given, list, metresOf, number, optional, refuse } from "../formula/fields.ts";
import { depthField, waterField } from "./fields.ts";
import {
  bedReach,
  breakingShare,
  crestLevel,
  crestUplift,
  highestWave,
  orbitalSpeed,
  surfaceReach,
  throughOrOver,
  upliftByHeight,
  waveLength,
  type Wave,
} from "./wave.ts";
import { roundInertia, squareInertia, waveForceMax, waveOnPiece } from "./wave-force.ts";

const MM = 1000;
const pieceKeys = [
  "piece_facing_mm",
  "piece_along_mm",
  "piece_bottom_mm",
  "piece_top_mm",
  "piece_cd",
  "piece_shape",
];
const deckKeys = ["deck_solid_m2", "deck_underside_mm", "slam"];

/** Keys of a group that must come together. */
function together(input: JsonObject, keys: readonly string[]): Problem[] {
  const missing = keys.filter((key) => input[key] === undefined);
  if (missing.length === 0 || missing.length === keys.length) return [];
  return missing.map((key) =>
    refuse(key, undefined, `is missing beside its companions`, `Give ${keys.join(", ")} together.`),
  );
}

const isHeight = (v: Json): v is number => typeof v === "number" && v >= 0 && v <= 100_000;
function heightFaults(input: JsonObject): Problem[] {
  const heights = input["undersides_mm"] as readonly Json[] | undefined;
  if (!heights) return [];
  if (input["deck_solid_m2"] === undefined)
    return [
      refuse(
        "undersides_mm",
        heights,
        "asks for heights of a deck that is not given",
        `Give ${deckKeys.join(", ")}.`,
      ),
    ];
  if (!heights.every(isHeight))
    return [
      refuse("undersides_mm", heights, "must be heights over the ground", "Give numbers from 0 to 100000."),
    ];
  return [];
}

function faultsOf(input: JsonObject, trace: Trace): Problem[] {
  const [H, d] = [metresOf(input, "height_mm"), metresOf(input, "depth_mm")];
  const most = highestWave({ k_b: breakingShare({}, trace), d: metres(d) }, trace);
  const [bottom, top] = [input["piece_bottom_mm"], input["piece_top_mm"]];
  return [
    ...(H > most
      ? [
          refuse(
            "height_mm",
            H * MM,
            `is more than the depth carries: ${(most * MM).toFixed(0)} mm`,
            `Give "height_mm" of ${Math.floor(most * MM)} at most, or the deeper water.`,
          ),
        ]
      : []),
    ...together(input, pieceKeys),
    ...together(input, deckKeys),
    ...(typeof bottom === "number" && typeof top === "number" && top <= bottom
      ? [refuse("piece_top_mm", top, "is not over the bottom", 'Give "piece_top_mm" over "piece_bottom_mm".')]
      : []),
    ...heightFaults(input),
  ];
}

function pieceOutputs(input: JsonObject, wave: Wave, trace: Trace): JsonObject {
  if (input["piece_cd"] === undefined) return {};
  const round = input["piece_shape"] === "round";
  const [facing, along] = [metresOf(input, "piece_facing_mm"), metresOf(input, "piece_along_mm")];
  const piece = {
    bottom_m: metresOf(input, "piece_bottom_mm"),
    top_m: metresOf(input, "piece_top_mm"),
    facing: metres(facing),
    plan: qty(facing * along * (round ? Math.PI / 4 : 1), "m2"),
    C_d: qty(given(input, "piece_cd"), "1"),
    C_m: round ? roundInertia({}, trace) : squareInertia({}, trace),
  };
  const found = waveOnPiece(wave, piece, qty(given(input, "water_kg_m3"), "kg/m3"), trace);
  return {
    drag_n: found.drag_n,
    inertia_n: found.inertia_n,
    force_n: found.force_n,
    acts_at_mm: found.acts_at_m * MM,
  };
}

function deckOutputs(input: JsonObject, wave: Wave, trace: Trace): JsonObject {
  if (input["deck_solid_m2"] === undefined) return {};
  const deck = {
    solid_m2: qty(given(input, "deck_solid_m2"), "m2"),
    slam: qty(given(input, "slam"), "1"),
    rho_w: qty(given(input, "water_kg_m3"), "kg/m3"),
  };
  const z_c = crestLevel({ d: wave.d, H: wave.H });
  const z_u = metres(metresOf(input, "deck_underside_mm"));
  const U = crestUplift(
    { k_s: deck.slam, rho_w: deck.rho_w, H: wave.H, z_c, z_u, A_s: deck.solid_m2 },
    trace,
  );
  const heights = input["undersides_mm"] as readonly number[] | undefined;
  return {
    uplift_n: U,
    ...(heights
      ? {
          uplift_by_height: upliftByHeight(
            wave,
            deck,
            heights.map((h) => h / MM),
          ).map((p) => ({
            underside_mm: p.underside_m * MM,
            uplift_n: p.uplift_n,
          })),
        }
      : {}),
  };
}

const waveMethod = defineMethod<unknown>(
  {
    id: "flood.wave",
    title: "Small waves: length, speeds, force on a post or stringer, uplift on a deck",
    inputs: [
      number("height_mm", "Height of the wave, crest to trough", 1, 20_000),
      number("period_s", "Period of the wave", 0.5, 30),
      depthField,
      waterField,
      optional(choice("piece_shape", "Section of the piece in the wave", ["round", "square"])),
      optional(number("piece_facing_mm", "Piece: size across the wave", 1, 1e5)),
      optional(number("piece_along_mm", "Piece: size along the wave", 1, 1e5)),
      optional(number("piece_bottom_mm", "Piece: bottom over the ground", 0, 20_000)),
      optional(number("piece_top_mm", "Piece: top over the ground", 1, 20_000)),
      optional(number("piece_cd", "Piece: drag coefficient", 0.01, 10)),
      optional(number("deck_solid_m2", "Deck: solid area", 1e-4, 1e4)),
      optional(number("deck_underside_mm", "Deck: underside over the ground", 0, 100_000)),
      optional(number("slam", "Deck: slam factor, 1 without slamming to 2 with it", 1, 2)),
      optional(list("undersides_mm", "Deck: other heights of the underside to compare")),
    ],
    outputs: [
      figure("length_mm", "Length of the wave"),
      figure("surface_speed_m_s", "Greatest speed of the water at the surface"),
      figure("bed_speed_m_s", "Greatest speed of the water at the bed"),
      figure("crest_mm", "Crest over the ground"),
      any("drag_n", "Greatest drag on the piece"),
      any("inertia_n", "Greatest inertia force on the piece"),
      any("force_n", "Greatest force on the piece"),
      any("acts_at_mm", "Height over the ground at which the force is taken"),
      any("uplift_n", "Uplift of the crest on the deck"),
      any("uplift_by_height", "Uplift at the other heights: underside_mm, uplift_n"),
    ],
    validity:
      "Linear regular waves, no current. Real crests in shallow water stand higher and steeper; waves over vegetation are lower.",
    sources: [surfaceReach.spec.source, waveForceMax.spec.source, crestUplift.spec.source, throughOrOver],
  },
  (input, _context, trace) => {
    const problems = faultsOf(input, trace);
    if (problems.length > 0) return { problems };
    const wave: Wave = {
      H: metres(metresOf(input, "height_mm")),
      T: qty(given(input, "period_s"), "s"),
      d: metres(metresOf(input, "depth_mm")),
    };
    const L = waveLength(wave, trace);
    const at = { H: wave.H, d: wave.d, L };
    return {
      length_mm: L * MM,
      surface_speed_m_s: orbitalSpeed({ A: surfaceReach(at, trace), T: wave.T }, trace, "at the surface"),
      bed_speed_m_s: orbitalSpeed({ A: bedReach(at, trace), T: wave.T }, trace, "at the bed"),
      crest_mm: crestLevel({ d: wave.d, H: wave.H }, trace) * MM,
      ...pieceOutputs(input, wave, trace),
      ...deckOutputs(input, wave, trace),
    };
  },
);

/** Registered calculation of waves. */
export const waveCalculations: readonly Calculation[] = [waveMethod];
