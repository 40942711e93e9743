import {
  bodyCoefficient,
  squareInertia,
  roundInertia,
  type FloodPiece,
  type FlowBody,
  type FlowShape,
} from "../flood/index.ts";
import {
  modulePieces,
  pieceVolume,
  platformPieces,
  supportPieces,
  type Kit,
  type PlacedPiece,
  type SupportKind,
} from "../kit/index.ts";
import { densityAtMoisture } from "../structure/index.ts";
import { DomainError } from "../units/index.ts";
import { groupBy, type Setting } from "./setting.ts";
import { dryMoisture, steelDensity } from "./rules.ts";
import type { PartMass } from "./input.ts";

/** What of a part or support stands in the water: levels over its own zero (underside of a part, ground of a support). */
export interface WetShape {
  readonly mass: PartMass;
  readonly bodies: readonly FlowBody[];
  /** The same with coefficients read once: for searching the worst. */
  readonly quick: readonly FlowBody[];
  /** Area of one body's plan [m2], its inertia and its drag coefficient, in the order of `bodies`. */
  readonly plans: readonly { readonly plan_m2: number; readonly inertia: number; readonly cd: number }[];
  /** Solid width seen from the side between two levels: nothing counted twice. */
  readonly slabs: () => readonly Slab[];
}

interface Slab {
  readonly z0: number;
  readonly z1: number;
  readonly width_m: number;
}

/** A module or platform: also what displaces water, and its solid plan. */
export interface AfloatShape extends WetShape {
  readonly pieces: readonly FloodPiece[];
  /** Solid area of the deck and what lies under it, seen from below [m2]. */
  readonly solid_m2: number;
}

const DECKS = ["deck board", "deck panel", "mesh panel"];

/** Shapes of the kit's parts, each worked out once per kind and height. */
export interface Shapes {
  readonly module: (length_m: number) => AfloatShape;
  readonly platform: () => AfloatShape;
  readonly support: (kind: string, height_m: number) => WetShape;
  /** A support that the kit does not have, not remembered. */
  readonly asked: (kind: SupportKind, height_m: number, mass: PartMass) => WetShape;
}

/** The kit's own length where it has this one, to the last digit [mm]. */
const bodyLength = ({ lengths_mm }: Kit, length_m: number): number =>
  lengths_mm.find((l) => Math.abs(l - length_m * 1000) < 1) ?? length_m * 1000;

export function shapesOf(setting: Setting): Shapes {
  const { kit } = setting.input.plan;
  const { sizes } = setting.context.tables;
  const { masses } = setting.input;
  const known = new Map<string, WetShape>();
  const keep = <S extends WetShape>(key: string, make: () => S): S => {
    const found = known.get(key) ?? make();
    known.set(key, found);
    return found as S;
  };
  return {
    module: (length_m) =>
      keep(`m${length_m}`, () =>
        afloat(setting, modulePieces(kit, bodyLength(kit, length_m), sizes), masses.module(length_m)),
      ),
    platform: () => keep("p", () => afloat(setting, platformPieces(kit, sizes), masses.platform)),
    support: (kind, height_m) =>
      keep(`s${kind}|${height_m.toFixed(4)}`, () =>
        wetShape(setting, clipped(supportPieces(kit, kind, height_m, sizes)), masses.support(kind, height_m)),
      ),
    asked: (kind, height_m, mass) =>
      wetShape(setting, clipped(supportPieces(kit, kind, height_m, sizes)), mass),
  };
}

/** What of a support stands over the ground. */
const clipped = (pieces: readonly PlacedPiece[]): PlacedPiece[] =>
  pieces.filter((p) => p.z1 > 1e-6).map((p) => ({ ...p, z0: Math.max(0, p.z0) }));

/** The deck counts as one plate on edge: its boards and panels lie behind each other in the flow. */
function deckPlate(pieces: readonly PlacedPiece[]): PlacedPiece[] {
  const deck = pieces.filter((p) => DECKS.includes(p.role));
  const first = deck[0];
  if (!first) return [];
  const least = (f: (p: PlacedPiece) => number): number => Math.min(...deck.map(f));
  const most = (f: (p: PlacedPiece) => number): number => Math.max(...deck.map(f));
  return [
    {
      ...first,
      role: "deck edge",
      x0: least((p) => p.x0),
      x1: most((p) => p.x1),
      y0: least((p) => p.y0),
      y1: most((p) => p.y1),
      z0: least((p) => p.z0),
      z1: most((p) => p.z1),
    },
  ];
}

function flowShape(setting: Setting, p: PlacedPiece): FlowShape {
  const { deck } = setting.input.plan.kit;
  if (p.role === "deck edge") return { kind: "deck-edge" };
  if (p.role === "screw pile") return { kind: "round-post" };
  if (p.role === "mesh upturn")
    return {
      kind: "mesh",
      open: deck.kind === "mesh" ? deck.open_share : 0,
      clogged: setting.input.plan.proof.flood.wrack?.clogged_share ?? 0,
    };
  return p.z1 - p.z0 > 2 * (p.x1 - p.x0) ? { kind: "square-post" } : { kind: "stringer" };
}

const round = (v: number): number => Math.round(v * 1e6) / 1e6;

function bodyOf(setting: Setting, alike: readonly PlacedPiece[]): FlowBody {
  const p = alike[0]!;
  return {
    name: alike.length === 1 ? p.role : `${alike.length} of ${p.role}`,
    count: alike.length,
    shape: flowShape(setting, p),
    along_m: round(p.x1 - p.x0),
    across_m: round(p.y1 - p.y0),
    bottom_m: round(p.z0),
    top_m: round(p.z1),
  };
}

function wetShape(setting: Setting, pieces: readonly PlacedPiece[], mass: PartMass): WetShape {
  const seen = [...pieces.filter((p) => !DECKS.includes(p.role)), ...deckPlate(pieces)].filter(
    (p) => p.z1 - p.z0 > 1e-6,
  );
  const alike = groupBy(seen, (p) =>
    [p.role, p.x1 - p.x0, p.y1 - p.y0, p.z0, p.z1]
      .map((v) => (typeof v === "number" ? v.toFixed(5) : v))
      .join(),
  );
  const bodies = [...alike.values()].map((group) => bodyOf(setting, group));
  const cds = bodies.map((body) => {
    const cd = bodyCoefficient(body, setting.context.tables);
    if (cd === null) throw new DomainError("no-drag-coefficient", { body: body.name });
    return cd;
  });
  const quick = bodies.map((body, i): FlowBody => {
    const cd = cds[i]!;
    return { ...body, shape: body.shape.kind === "round-post" ? body.shape : { kind: "own", cd } };
  });
  const plans = bodies.map((b, i) => {
    const isRound = b.shape.kind === "round-post";
    return {
      plan_m2: b.along_m * b.across_m * (isRound ? Math.PI / 4 : 1),
      inertia: (isRound ? roundInertia : squareInertia)({}),
      cd: cds[i]!,
    };
  });
  let slabs: readonly Slab[] | null = null;
  return { mass, bodies, quick, plans, slabs: () => (slabs ??= slabsOf(setting, seen)) };
}

/** Cuts the side view into slabs; in each, the widths of all pieces laid over one another. */
function slabsOf(setting: Setting, pieces: readonly PlacedPiece[]): readonly Slab[] {
  const cuts = [...new Set(pieces.flatMap((p) => [round(p.z0), round(p.z1)]))].sort((a, b) => a - b);
  return cuts.slice(1).map((z1, i) => {
    const z0 = cuts[i]!;
    const here = pieces.filter((p) => p.z0 < z1 - 1e-6 && p.z1 > z0 + 1e-6);
    return { z0, z1, width_m: Math.max(union(here.filter(isSolid)), meshWidth(setting, here)) };
  });
}

const isSolid = (p: PlacedPiece): boolean => p.role !== "mesh upturn";

/** Solid width of standing mesh with what clogs it [m]. */
function meshWidth(setting: Setting, pieces: readonly PlacedPiece[]): number {
  const { deck } = setting.input.plan.kit;
  const open = deck.kind === "mesh" ? deck.open_share : 0;
  const clogged = setting.input.plan.proof.flood.wrack?.clogged_share ?? 0;
  return union(pieces.filter((p) => !isSolid(p))) * (1 - open * (1 - clogged));
}

/** Length that the pieces cover along the walk [m]. */
function union(pieces: readonly PlacedPiece[]): number {
  let [sum, reach] = [0, -Infinity];
  for (const p of [...pieces].sort((a, b) => a.x0 - b.x0)) {
    sum += Math.max(0, p.x1 - Math.max(reach, p.x0));
    reach = Math.max(reach, p.x1);
  }
  return sum;
}

/** Solid area under water, seen from the side [m2]. depth over the shape's zero [m]. */
export const solidSide = (shape: WetShape, depth_m: number): number =>
  shape.slabs().reduce((sum, s) => sum + s.width_m * Math.max(0, Math.min(s.z1, depth_m) - s.z0), 0);

function afloat(setting: Setting, pieces: readonly PlacedPiece[], mass: PartMass): AfloatShape {
  const { kit } = setting.input.plan;
  const rho = densityAtMoisture({ G: setting.gravity, M: dryMoisture({}) });
  const timber = pieces
    .filter((p) => p.size !== null)
    .map((p): FloodPiece => solid(p.role, p.z0, p.z1, pieceVolume(p), rho));
  const sheet = pieces.find((p) => DECKS.includes(p.role) && p.size === null);
  const top = Math.max(...pieces.map((p) => p.z1));
  const [z0, z1] = [sheet?.z0 ?? 0, Math.max(sheet?.z1 ?? top, (sheet?.z0 ?? 0) + 1e-3)];
  const { bulk_kg = 0, bulk_m3 = 0 } = mass;
  const heavy = Math.max(0, mass.other_kg - bulk_kg);
  const others = [
    ...(heavy > 0 ? [solid("metal", z0, z1, heavy / steelDensity({}), steelDensity({}))] : []),
    ...(bulk_m3 > 0 && bulk_kg > 0 ? [solid("deck panels", z0, z1, bulk_m3, bulk_kg / bulk_m3)] : []),
  ];
  const { deck } = kit;
  const open = deck.kind === "boards" ? 0 : deck.open_share;
  const area = pieces
    .filter((p) => DECKS.includes(p.role))
    .reduce((sum, p) => sum + (p.x1 - p.x0) * (p.y1 - p.y0), 0);
  return { ...wetShape(setting, pieces, mass), pieces: [...timber, ...others], solid_m2: area * (1 - open) };
}

const solid = (
  name: string,
  bottom_m: number,
  top_m: number,
  volume_m3: number,
  density_kg_m3: number,
): FloodPiece => ({
  name,
  bottom_m,
  top_m,
  volume_m3,
  density_kg_m3,
});
