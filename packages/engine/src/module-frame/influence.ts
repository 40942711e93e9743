import {
  assemble,
  beamForces,
  contactFactors,
  displacements,
  reactions,
  type Contact,
  type ContactFactors,
  type Factored,
  type NodeLoad,
} from "../grillage/index.ts";
import { meshOf, type Mesh } from "./mesh.ts";
import { ownWeight, spreadOf, type Spread } from "./spread.ts";
import type { FrameRecipe, FrameState, Placement } from "./recipe.ts";

/**
 * What one load does everywhere, as one vector; `Layout` says where each effect stands in it: stringer moments before
 * and after each station (a cross piece that twists makes a step in them) and sags by stringer and station, shears by stringer and the space after a station, pushes by bearing, how far the
 * node over each bearing goes down, and shear and end moments of cross pieces by beam of the mesh's rows.
 */
export type Effects = Float64Array;

export type EffectKind =
  "moment" | "moment_after" | "shear" | "sag" | "push" | "over" | "row_shear" | "row_from" | "row_to";
export type Layout = Readonly<Record<EffectKind | "size", number>>;

function layoutOf({ rests, stringers_y_m }: FrameRecipe, mesh: Mesh): Layout {
  const [S, n] = [mesh.stations_m.length, stringers_y_m.length];
  const rows = mesh.rowBeams.flat().length;
  const sizes: readonly (readonly [EffectKind, number])[] = [
    ["moment", n * S],
    ["moment_after", n * S],
    ["shear", n * (S - 1)],
    ["sag", n * S],
    ["push", rests.length],
    ["over", rests.length],
    ["row_shear", rows],
    ["row_from", rows],
    ["row_to", rows],
  ];
  let size = 0;
  const starts: Partial<Record<EffectKind, number>> = {};
  for (const [kind, length] of sizes) {
    starts[kind] = size;
    size += length;
  }
  return { ...(starts as Record<EffectKind, number>), size };
}

/** The effects of a unit load on each node that can carry one, while one set of bearings touches. */
export interface Influence {
  readonly contact: Contact;
  readonly own: Effects;
  /** Of a settled bearing alone. */
  readonly settled: Effects;
  readonly unit: (node: number) => Effects;
}

/** A part in one state, ready for any load. */
export interface FrameModel {
  readonly recipe: FrameRecipe;
  readonly state: FrameState;
  readonly mesh: Mesh;
  readonly layout: Layout;
  readonly spread: Spread;
  readonly factors: ContactFactors;
  /** Own weight on the nodes of the stringers. */
  readonly own: readonly NodeLoad[];
}

/** Effects of loads while the bearings of `system` touch. Throws `DomainError` when they cannot hold the part. */
export function effectsOf(
  system: Factored,
  { mesh, layout, recipe }: FrameModel,
  loads: readonly NodeLoad[],
  settled: boolean,
): Effects {
  const u = displacements(system, loads, settled);
  const S = mesh.stations_m.length;
  const out = new Float64Array(layout.size);
  for (let i = 0; i < recipe.stringers_y_m.length; i++) {
    const n = recipe.pieces[i]!;
    for (let s = 0; s < S; s++) {
      out[layout.sag + i * S + s] = u[mesh.nodeOf(i, s) * 3]!;
      if (s === S - 1) continue;
      const forces = beamForces(system, mesh.beamOf(i, s), u);
      out[layout.moment + i * S + s + 1] = forces.moment_to / n;
      out[layout.moment_after + i * S + s] = forces.moment_from / n;
      out[layout.shear + i * (S - 1) + s] = forces.shear / n;
    }
  }
  const { bearings } = system.assembled.grillage;
  out.set(reactions(system, u, loads), layout.push);
  for (const [b, { node }] of bearings.entries()) out[layout.over + b] = u[node * 3]!;
  for (const [r, e] of mesh.rowBeams.flat().entries()) {
    const forces = beamForces(system, e, u);
    out[layout.row_shear + r] = forces.shear;
    out[layout.row_from + r] = forces.moment_from;
    out[layout.row_to + r] = forces.moment_to;
  }
  return out;
}

/** Prepares a part in one state. */
export function frameModel(
  recipe: FrameRecipe,
  state: FrameState,
  placements: readonly Placement[],
): FrameModel {
  const mesh = meshOf(recipe, state, placements);
  return {
    recipe,
    state,
    mesh,
    layout: layoutOf(recipe, mesh),
    spread: spreadOf(recipe, mesh),
    factors: contactFactors(assemble(mesh.grillage)),
    own: ownWeight(recipe, mesh),
  };
}

/** Influence of one set of bearings, unit loads solved when first asked for; null when they cannot hold the part. */
export function influenceOf(model: FrameModel, contact: Contact): Influence | null {
  const system = model.factors.exact(contact);
  if (!system.stable) return null;
  const units = new Map<number, Effects>();
  return {
    contact,
    own: effectsOf(system, model, model.own, false),
    settled: effectsOf(system, model, [], true),
    unit: (node) => {
      let known = units.get(node);
      if (!known) units.set(node, (known = effectsOf(system, model, [{ node, down: 1 }], false)));
      return known;
    },
  };
}
