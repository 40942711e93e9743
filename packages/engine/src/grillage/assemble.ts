import { DomainError } from "../units/index.ts";
import { addTo, emptyBand, placeIn, type Band } from "./band.ts";
import { beamStiffness, type BeamStiffness } from "./beam-stiffness.ts";
import type { Grillage } from "./types.ts";

/** Degrees of freedom of a node: w down, dw/dx, dw/dy. */
export const PER_NODE = 3;

/** A grillage with its stiffness put together; what touches is decided later. */
export interface Assembled {
  readonly grillage: Grillage;
  readonly beams: readonly BeamStiffness[];
  readonly stiffness: Band;
}

/**
 * Puts the beams together. A slope that no beam resists at all (the twist of a stringer given no torsional stiffness)
 * is held at zero: no moment ever reaches it.
 *
 * Throws `DomainError` on a beam that names no node, has no length or no stiffness.
 */
export function assemble(grillage: Grillage): Assembled {
  const { nodes } = grillage;
  const beams = grillage.beams.map((beam) => beamStiffness(beam, nodes));
  const reach = Math.max(0, ...grillage.beams.map((b) => Math.abs(b.to - b.from)));
  for (const { node } of grillage.bearings)
    if (!nodes[node]) throw new DomainError("bearing-without-node", { node });
  const stiffness = emptyBand(nodes.length * PER_NODE, (reach + 1) * PER_NODE - 1);
  for (const [e, { global }] of beams.entries()) {
    const places = freedomsOf(grillage, e);
    for (let i = 0; i < 6; i++)
      for (let j = 0; j <= i; j++) addTo(stiffness, places[i]!, places[j]!, global[i * 6 + j]!);
  }
  holdLooseSlopes(stiffness);
  return { grillage, beams, stiffness };
}

/** Degrees of freedom of a beam, in the order of its stiffness. */
export function freedomsOf({ beams }: Grillage, e: number): readonly number[] {
  const { from, to } = beams[e]!;
  return [from * 3, from * 3 + 1, from * 3 + 2, to * 3, to * 3 + 1, to * 3 + 2];
}

function holdLooseSlopes(band: Band): void {
  for (let i = 0; i < band.size; i++)
    if (i % PER_NODE !== 0 && band.values[placeIn(band, i, i)] === 0) addTo(band, i, i, 1);
}
