import { crossPlaces, type MeshDeck, type PanelDeck } from "../kit/index.ts";
import { M_PER_IN, metres, showQuantity } from "../units/index.ts";
import { checkCatchBoard, checkJointScrews, type JointPiece } from "./catch-board.ts";
import { FLOOD, GRADE, STAFF_ACCESS } from "./cautions.ts";
import { widestBay } from "./cross-piece.ts";
import { checkBoardHold } from "./deck-pull.ts";
import { reachOf, type Frame } from "./frame.ts";
import type { ModuleGroup } from "./plan-frames.ts";
import type { MetJoint } from "./plan-joints.ts";
import { cannotCheck, notApplicable } from "./result.ts";
import { sizeOf, type Setting } from "./setting.ts";
import { sillPatterns } from "./support-loads.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import { floodOf } from "./uplift-checks.ts";
import type { BeamPattern } from "./support-beam.ts";

const STATICS = {
  id: "statics",
  title: "Statics",
  at: "moments about the outer stringer",
  status: "computed",
} as const;

/** What holds the deck down, and what carries a module's start on its neighbour. */
export function fasteningChecks(
  setting: Setting,
  groups: readonly ModuleGroup[],
  joints: readonly MetJoint[],
): CheckResult[] {
  const longest = groups.at(-1);
  if (!longest) return [];
  const parts = groups.flatMap((g) => g.parts.map((p) => p.id));
  return [
    ...catchBoardChecks(setting, groups, joints, parts),
    deckHold(setting, longest.frame, joints, parts),
  ];
}

/** One end of each module by itself on the joint, all its stringers. */
function endPatterns(setting: Setting, groups: readonly ModuleGroup[]): BeamPattern[] {
  return groups.flatMap(({ frame }) =>
    sillPatterns(
      {
        positions_m: frame.positions_m,
        clear_width_m: frame.clear_width_m,
        left_m: frame.span_m,
        right_m: 0,
        sill_m: Infinity,
        dead_kg: (frame.dead_kg_m * frame.span_m) / 2,
      },
      setting.cases,
    ).map((p) => ({ ...p, name: `${p.name}, ${frame.name}` })),
  );
}

function catchBoardChecks(
  setting: Setting,
  groups: readonly ModuleGroup[],
  joints: readonly MetJoint[],
  parts: readonly string[],
): CheckResult[] {
  const { context, lumber } = setting;
  const { kit } = setting.input.plan;
  const { end } = kit;
  if (end.kind !== "catch-board") return [];
  const caution = `The board is held at both ends by screws in end grain, which have no value in withdrawal. Twisting by the load on its projecting edge is left out. Where the sill reaches under both modules' stringers it takes this load as soon as the board gives. ${STAFF_ACCESS} ${GRADE}`;
  const base = (id: string, title: string, rule: CheckBase["rule"]): CheckBase => ({
    id: `fastening.${id}`,
    kind: "fastening",
    title,
    parts,
    rule,
    caution,
  });
  const { code } = context;
  const isMet = joints.some(
    ({ joint, parts: here }) =>
      here.some((p) => p.kind === "module" && p.to === joint.id) && here.some((p) => p.from === joint.id),
  );
  if (!isMet)
    return [
      notApplicable(
        base("catch-board", "Catch board", code.rule("bending")),
        "no part starts where a module ends",
      ),
    ];
  const patterns = endPatterns(setting, groups);
  const { frame, length_mm } = groups[0]!;
  const stringer = sizeOf(setting, kit.stringers.size);
  const piece = (name: string, size: string): JointPiece => ({
    name,
    size,
    lumber,
    bay_m: widestBay(frame, stringer),
    screw: kit.cross_pieces.screw,
    screws_per_end: kit.cross_pieces.screws_per_end,
    side_m: stringer.thickness_in * M_PER_IN,
  });
  const board = piece("catch board", end.size);
  const start = crossPlaces(kit, length_mm, context.tables.sizes)[0]?.size ?? kit.cross_pieces.size;
  return [
    ...checkCatchBoard(
      board,
      patterns,
      (part) =>
        base(
          part === "bending" ? "catch-board" : "catch-board-shear",
          `Catch board ${end.size}: ${part}`,
          code.rule(part),
        ),
      context,
    ),
    checkJointScrews(
      board,
      patterns,
      base("catch-board-screws", "Screws of the catch board", code.rule("screws")),
      context,
    ),
    checkJointScrews(
      piece("start piece", start),
      patterns,
      base("start-screws", "Screws of the cross piece that lies on the catch board", code.rule("screws")),
      context,
    ),
  ];
}

/** Flood level over the underside of the lowest deck [m]; 0 where none reaches, null when it is not known. */
function floodOver(setting: Setting, joints: readonly MetJoint[]): number | null {
  const flood = floodOf(setting);
  if (flood === null) return 0;
  if ("missing" in flood) return null;
  const low = Math.min(...joints.map(({ joint }) => joint.ground_m + joint.support_height_m));
  return flood.z_m - low - setting.geometry.stringer_depth_m;
}

function deckHold(
  setting: Setting,
  frame: Frame,
  joints: readonly MetJoint[],
  parts: readonly string[],
): CheckResult {
  const { context, lumber, gravity } = setting;
  const { kit, visits, water_kg_m3 } = setting.input.plan;
  const { deck } = kit;
  const base: CheckBase = {
    id: "fastening.deck-uplift",
    kind: "fastening",
    title: "Deck held down",
    parts,
    rule: deck.kind === "boards" ? context.code.rule("screws") : STATICS,
    caution: `Wind is left out. ${FLOOD} ${STAFF_ACCESS}`,
  };
  const flood_m = floodOver(setting, joints);
  if (flood_m === null) return cannotCheck(base, ["the flood level of the plan on the site's datum"]);
  const outer = frame.positions_m.at(-1)!;
  const beyond_m = Math.max(0, reachOf(frame.clear_width_m, null) - outer);
  if (deck.kind === "boards")
    return checkBoardHold(
      {
        size: deck.size,
        stringer: kit.stringers.size,
        lumber,
        length_m: metres(deck.width_mm / 1000),
        bearings: frame.positions_m.length,
        screw: deck.screw,
        screws_per_bearing: deck.screws_per_bearing,
        beyond_m,
        next_m: outer - frame.positions_m.at(-2)!,
        flood_m,
        water_kg_m3,
        gravity,
      },
      visits,
      base,
      context,
    );
  return sheetHold(setting, deck, base, beyond_m, flood_m);
}

/** Mesh sinks and bends; a panel may float, and what its clips hold is not known. */
function sheetHold(
  setting: Setting,
  deck: MeshDeck | PanelDeck,
  base: CheckBase,
  beyond_m: number,
  flood_m: number,
): CheckResult {
  const { water_kg_m3 } = setting.input.plan;
  if (deck.kind === "mesh")
    return notApplicable(
      base,
      "mesh of steel sinks, and bends where it is trodden on outside a stringer: nothing lifts its clips but wind and current",
    );
  const share = (1 - deck.open_share) * (deck.thickness_mm / 1000);
  const density = share > 0 ? deck.mass_kg_m2 / share : Infinity;
  const floats = flood_m > 0 && density < water_kg_m3;
  if (!floats && beyond_m <= 0)
    return notApplicable(
      base,
      "nobody can stand outside the stringers, and no flood of the plan lifts the panels",
    );
  const why = [
    ...(floats
      ? [
          `the water lifts ${showQuantity((water_kg_m3 - density) * share, "kg", setting.context.units)} a square metre`,
        ]
      : []),
    ...(beyond_m > 0 ? ["a foot outside the stringers levers"] : []),
  ];
  return cannotCheck(base, [`the pull that one "${deck.fastener}" holds (${why.join("; ")}): test one`]);
}
