import { M_PER_IN } from "../units/index.ts";
import { GRADE } from "./cautions.ts";
import { checkCrossPiece, widestBay, type CrossPiece } from "./cross-piece.ts";
import { checkDeckBoards } from "./deck-boards.ts";
import { checkDeckMesh } from "./deck-mesh.ts";
import { checkDeckPanel } from "./deck-panel.ts";
import type { Peak } from "../module-frame/index.ts";
import type { Frame } from "./frame.ts";
import { crossPlaces } from "../kit/index.ts";
import type { PartMass } from "./input.ts";
import { checkLifting, type LiftLabel } from "./lifting.ts";
import type { ModuleGroup } from "./plan-frames.ts";
import type { PieceLabel } from "./piece-check.ts";
import { BRACE_RULE } from "./rules.ts";
import { sizeOf, type Setting } from "./setting.ts";
import { checkStringers, type FrameLabel } from "./stringer-check.ts";
import type { StringerCheck } from "./stringer-model.ts";
import type { CheckResult } from "./types.ts";

const STRINGER_CHECKS: readonly StringerCheck[] = ["bending", "shear", "deflection"];

/** The three checks of the stringers of one frame. */
export const stringerChecks = (setting: Setting, frame: Frame, label: FrameLabel): CheckResult[] =>
  STRINGER_CHECKS.map((check) =>
    checkStringers(
      check,
      { frame, model: setting.modelOf(frame), cases: setting.cases, rungs: setting.rungs },
      setting.input.plan.visits,
      label,
      setting.context,
    ),
  );

const idsOf = (parts: readonly { readonly id: string }[]): string[] => parts.map((p) => p.id);

export const moduleStringerChecks = (setting: Setting, groups: readonly ModuleGroup[]): CheckResult[] =>
  groups.flatMap((group) =>
    stringerChecks(setting, group.frame, {
      kind: "module",
      suffix: `${Math.round(group.length_mm)}mm`,
      parts: idsOf(group.parts),
    }),
  );

function crossPieceOf(
  setting: Setting,
  frame: Frame,
  size: string,
  screw: string,
  screws: number,
): CrossPiece {
  const { kit } = setting.input.plan;
  const stringer = sizeOf(setting, frame.size);
  return {
    size,
    lay: kit.cross_pieces.lay,
    span_m: widestBay(frame, stringer),
    lumber: setting.lumber,
    screw,
    screws_per_end: screws,
    side_m: stringer.thickness_in * M_PER_IN,
    along_m: frame.brace_m,
  };
}

/** Boards run from stringer to stringer and are checked to do so alone: a cross piece below them only braces. */
const bracesOnly = (label: PieceLabel): CheckResult => ({
  id: label.id,
  kind: label.kind,
  title: label.name,
  parts: label.parts,
  rule: BRACE_RULE,
  caution: GRADE,
  status: "not-applicable",
  because:
    "the deck boards carry from stringer to stringer by themselves; a cross piece below them keeps the stringers upright and apart",
});

/** Largest shear of any cross piece of the modules with stiff joints; null where no frame is known. */
function stiffShear(setting: Setting, groups: readonly ModuleGroup[]): Peak | null {
  const peaks = groups.flatMap(({ frame }) => {
    const model = setting.modelOf(frame);
    return model.ok ? (model.value.stiff(setting.cases)?.largest.row_shear ?? []) : [];
  });
  return peaks.reduce<Peak | null>((a, b) => (a === null || b.value > a.value ? b : a), null);
}

/** Every size of cross piece that the modules of the layout hold, each checked once. */
export function crossPieceChecks(setting: Setting, groups: readonly ModuleGroup[]): CheckResult[] {
  const { kit, visits } = setting.input.plan;
  const bySize = new Map<string, string[]>();
  for (const group of groups)
    for (const size of new Set(
      crossPlaces(kit, group.length_mm, setting.context.tables.sizes).map((p) => p.size),
    ))
      bySize.set(size, [...(bySize.get(size) ?? []), ...idsOf(group.parts)]);
  return [...bySize].flatMap(([size, parts]) => {
    const { screw, screws_per_end, lay } = kit.cross_pieces;
    const piece = {
      ...crossPieceOf(setting, groups[0]!.frame, size, screw, screws_per_end),
      stiff_shear: stiffShear(setting, groups),
    };
    const id = size === kit.cross_pieces.size ? "cross-piece" : `cross-piece.${size}`;
    const label: PieceLabel = { id, kind: "cross-piece", name: `Cross piece ${size} laid ${lay}`, parts };
    if (kit.deck.kind === "boards") return [bracesOnly(label)];
    return checkCrossPiece(piece, visits, label, setting.context);
  });
}

/** Cross pieces of the platform. */
export function platformCrossPieceChecks(
  setting: Setting,
  frame: Frame,
  parts: readonly string[],
): CheckResult[] {
  const { kit, visits } = setting.input.plan;
  const { cross_pieces, screw, screws_per_end } = kit.platform;
  const piece = crossPieceOf(setting, frame, cross_pieces.size, screw, screws_per_end);
  const name = `Platform cross piece ${cross_pieces.size} laid ${kit.cross_pieces.lay}`;
  const label: PieceLabel = { id: "platform.cross-piece", kind: "platform", name, parts };
  if (kit.deck.kind === "boards") return [bracesOnly(label)];
  return checkCrossPiece(piece, visits, label, setting.context);
}

/** The deck over one frame: boards across its stringers, or mesh over stringers and cross pieces. */
export function deckChecks(setting: Setting, frame: Frame, label: Omit<PieceLabel, "name">): CheckResult[] {
  const { kit, visits } = setting.input.plan;
  const { deck } = kit;
  const { positions_m: p } = frame;
  const stringer = sizeOf(setting, frame.size).thickness_in * M_PER_IN;
  const outer = p.at(-1)! - p[0]! + stringer;
  if (deck.kind === "mesh") {
    const bay = widestBay(frame, sizeOf(setting, frame.size));
    const mesh = {
      wire_m: deck.wire_mm / 1000,
      pitch_m: deck.pitch_mm / 1000,
      yield_pa: deck.yield_mpa * 1e6,
      span_m: Math.min(bay, frame.brace_m),
      clip: deck.clip,
    };
    return checkDeckMesh(mesh, visits, { ...label, name: `Mesh deck, ${frame.name}` }, setting.context);
  }
  if (deck.kind !== "boards")
    return checkDeckPanel(
      { deck, span_m: frame.brace_m },
      visits,
      { ...label, name: `${deck.name}, ${frame.name}` },
      setting.context,
    );
  const span_m = Math.max(...p.slice(1).map((x, i) => x - p[i]!));
  const along_m = sizeOf(setting, deck.size).width_in * M_PER_IN + deck.gap_mm / 1000;
  const board = { size: deck.size, lay: "flat", span_m, lumber: setting.lumber } as const;
  return checkDeckBoards(
    { board, clear_width_m: frame.clear_width_m, overall_m: outer, stringers: p.length, along_m },
    visits,
    { ...label, name: `Deck board ${deck.size}, ${frame.name}` },
    setting.context,
  );
}

/** Each length of module, new and soaked, against the carriers of the plan. */
export const liftingChecks = (setting: Setting, groups: readonly ModuleGroup[]): CheckResult[] =>
  groups.flatMap((group) => {
    const mass = setting.input.masses.module(group.length_m);
    const label = {
      id: `${Math.round(group.length_mm)}mm`,
      name: group.frame.name,
      parts: idsOf(group.parts),
    };
    return liftedTwice(setting, mass, label);
  });

const liftedTwice = (setting: Setting, mass: PartMass, label: LiftLabel): CheckResult[] =>
  (["new", "soaked"] as const).map((state) =>
    checkLifting(mass, setting.gravity, state, label, setting.input.plan.laying.carriers, setting.context),
  );

/** Each half of a platform that is carried in two pieces; both alike in size are told apart by their names. */
export function halfLiftingChecks(setting: Setting, parts: readonly string[]): CheckResult[] {
  const halves = setting.input.masses.platform_parts ?? [];
  if (halves.length < 2) return [];
  return halves.flatMap((mass, i) => {
    const side = i === 0 ? "right" : "left";
    return liftedTwice(setting, mass, { id: `platform.${side}`, name: `${side} half of a platform`, parts });
  });
}
