import {
  crossPlaces,
  deckBoards,
  moduleStringers,
  platformStringers,
  supportKind,
  underPlatformEdge,
  type StringerLines,
  type SupportKind,
} from "../kit/index.ts";
import { stringerEdgeJoints, type ModulePart, type PlatformPart } from "../layout/index.ts";
import { M_PER_IN, showQuantity } from "../units/index.ts";
import type { Frame, FrameBuild, FrameRow } from "./frame.ts";
import { massOf } from "./lifting.ts";
import { jointsOf } from "./plan-joints.ts";
import { groupBy, sizeOf, type Setting } from "./setting.ts";

/** All modules of one length. */
export interface ModuleGroup {
  readonly length_mm: number;
  readonly length_m: number;
  readonly frame: Frame;
  readonly parts: readonly ModulePart[];
}

const middles = (lines: StringerLines): number[] => lines.lines.map(([a, b]) => (a + b) / 2000);

/** Longest free length between cross pieces, from end to end [m]. */
function braceOf(setting: Setting, length_mm: number): number {
  const { kit } = setting.input.plan;
  const rows = crossPlaces(kit, length_mm, setting.context.tables.sizes).map(({ x }) => (x[0] + x[1]) / 2);
  const places = [...rows, length_mm].sort((a, b) => a - b);
  const gaps = places.map((at, i) => at - (i === 0 ? 0 : places[i - 1]!));
  return Math.max(...gaps) / 1000;
}

/** Deck boards of a part of this length, each as a row across. */
function boardRows({ input, context }: Setting, length_mm: number): FrameRow[] {
  const { deck } = input.plan.kit;
  if (deck.kind !== "boards") return [];
  return deckBoards(deck, length_mm, [0, deck.width_mm], 0, context.tables.sizes).map((board) => ({
    x_m: (board.x0 + board.x1) / 2,
    size: deck.size,
    lay: "flat",
  }));
}

function moduleFrame(setting: Setting, length_mm: number): Frame {
  const { kit } = setting.input.plan;
  const { context, gravity, geometry } = setting;
  const length_m = length_mm / 1000;
  const mass = massOf(setting.input.masses.module(length_m), gravity, "soaked");
  return {
    name: `${showQuantity(length_m, "m", context.units)} module`,
    span_m: length_m,
    positions_m: middles(moduleStringers(kit, context.tables.sizes)),
    size: kit.stringers.size,
    lumber: setting.lumber,
    clear_width_m: geometry.clear_width_m,
    brace_m: braceOf(setting, length_mm),
    has_boards: kit.deck.kind === "boards",
    dead_kg_m: mass / length_m,
    build: {
      rows: crossPlaces(kit, length_mm, context.tables.sizes).map(({ x, size }) => ({
        x_m: (x[0] + x[1]) / 2000,
        size,
        lay: kit.cross_pieces.lay,
      })),
      boards: kit.stringers.count > 2 ? boardRows(setting, length_mm) : [],
      stringer_m: sizeOf(setting, kit.stringers.size).thickness_in * M_PER_IN,
      platform_sill_m: null,
    },
  };
}

/** Modules of the layout by length, shortest first, each with its frame. */
export function moduleGroups(setting: Setting): ModuleGroup[] {
  const modules = setting.input.layout.parts.filter((p) => p.kind === "module");
  const groups = groupBy(modules, (m) => String(Math.round(m.length_m * 1e5) / 100));
  return [...groups]
    .map(([key, parts]) => {
      const length_mm = Number(key);
      return { length_mm, length_m: length_mm / 1000, frame: moduleFrame(setting, length_mm), parts };
    })
    .sort((a, b) => a.length_mm - b.length_mm);
}

/** Distance between neighbouring rows of cross pieces of a platform, centre to centre [m]. */
function platformBrace(setting: Setting): number {
  const { platform, cross_pieces } = setting.input.plan.kit;
  const size = sizeOf(setting, platform.cross_pieces.size);
  const along = (cross_pieces.lay === "flat" ? size.width_in : size.thickness_in) * M_PER_IN;
  const side = platform.side_mm / 1000;
  return platform.cross_pieces.count > 1 ? (side - along) / (platform.cross_pieces.count - 1) : side;
}

/** Rows of a platform's cross pieces, and the shortest sills that stand under its edges. */
function platformBuild(setting: Setting, parts: readonly PlatformPart[]): FrameBuild {
  const { platform, cross_pieces } = setting.input.plan.kit;
  const { size, count } = platform.cross_pieces;
  const row = sizeOf(setting, size);
  const along = (cross_pieces.lay === "flat" ? row.width_in : row.thickness_in) * M_PER_IN;
  const step = (platform.side_mm / 1000 - along) / (count - 1);
  const { kit } = setting.input.plan;
  const side = platform.side_mm / 1000;
  const under = new Set(parts.flatMap(jointsOf));
  const ends = stringerEdgeJoints(parts);
  const joints = setting.input.layout.joints.filter((joint) => under.has(joint.id));
  const own = joints.map((joint) => supportKind(kit, joint.support));
  const atEnds = own.filter((_, i) => ends.has(joints[i]!.id)).map((kind) => underPlatformEdge(kit, kind));
  const shortest = (kinds: readonly SupportKind[]): number =>
    Math.min(...kinds.map((kind) => kind.sill.length_mm / 1000), side);
  return {
    rows: Array.from({ length: count }, (_, r) => ({
      x_m: r * step + along / 2,
      size,
      lay: cross_pieces.lay,
    })),
    boards: boardRows(setting, platform.side_mm),
    stringer_m: sizeOf(setting, platform.stringers.size).thickness_in * M_PER_IN,
    platform_sill_m: shortest(own),
    ...(platform.edge_sill_mm === undefined ? {} : { platform_end_sill_m: shortest(atEnds) }),
  };
}

/** The frame of a platform; null when the layout has none. */
export function platformFrame(setting: Setting): { frame: Frame; parts: readonly PlatformPart[] } | null {
  const parts = setting.input.layout.parts.filter((p) => p.kind === "platform");
  if (parts.length === 0) return null;
  const { kit } = setting.input.plan;
  const side = kit.platform.side_mm / 1000;
  const curbs = kit.curb ? 2 * sizeOf(setting, kit.curb.size).width_in * M_PER_IN : 0;
  const frame: Frame = {
    name: `${showQuantity(side, "m", setting.context.units)} platform`,
    span_m: side,
    positions_m: middles(platformStringers(kit, setting.context.tables.sizes)),
    size: kit.platform.stringers.size,
    lumber: setting.lumber,
    clear_width_m: side - curbs,
    brace_m: platformBrace(setting),
    has_boards: kit.deck.kind === "boards",
    dead_kg_m: massOf(setting.input.masses.platform, setting.gravity, "soaked") / side,
    build: platformBuild(setting, parts),
  };
  return { frame, parts };
}
