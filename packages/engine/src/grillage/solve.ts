import { DomainError } from "../units/index.ts";
import { addTo, copyBand, factorBand, placeIn, solveBand, type Band } from "./band.ts";
import { PER_NODE, type Assembled } from "./assemble.ts";
import type { BeamForces, Contact, NodeLoad } from "./types.ts";

/** A grillage whose touching bearings are settled: any load can be solved at once. */
export interface Factored {
  readonly assembled: Assembled;
  readonly contact: Contact;
  readonly factors: Band;
  /** False when the bearings that touch cannot hold it: it turns over or falls. */
  readonly stable: boolean;
}

/** Below this share of its own stiffness a pivot is nothing but rounding: a mechanism. */
const SINGULAR = 1e-11;

/** Hold of a bearing that does not touch while the search for those that do goes on [N/m]. */
const SOFT = 1;

/** Factors the stiffness with the touching bearings held at their level; `soft` keeps a trace of hold on the others. */
export function factorContact(assembled: Assembled, contact: Contact, soft = false): Factored {
  const factors = copyBand(assembled.stiffness);
  for (const [b, { node }] of assembled.grillage.bearings.entries())
    if (contact[b]) hold(factors, node * PER_NODE);
    else if (soft) addTo(factors, node * PER_NODE, node * PER_NODE, SOFT);
  const least = factorBand(factors);
  const touching = contact.filter(Boolean).length;
  return { assembled, contact, factors, stable: soft ? least > 0 : touching >= 2 && least > SINGULAR };
}

/** Puts 1 on the diagonal and 0 beside it. */
function hold(band: Band, at: number): void {
  for (let j = Math.max(0, at - band.width); j < at; j++) band.values[placeIn(band, at, j)] = 0;
  for (let i = at + 1; i <= Math.min(band.size - 1, at + band.width); i++)
    band.values[placeIn(band, i, at)] = 0;
  band.values[placeIn(band, at, at)] = 1;
}

const stiffnessAt = (band: Band, i: number, j: number): number => {
  const [row, column] = i >= j ? [i, j] : [j, i];
  return row - column > band.width ? 0 : band.values[placeIn(band, row, column)]!;
};

/** Displacements under node loads; with `settled`, the touching bearings also go down as far as they have settled. */
export function displacements(system: Factored, loads: readonly NodeLoad[], settled = true): Float64Array {
  if (!system.stable) throw new DomainError("grillage-not-held", { contact: [...system.contact] });
  const { assembled, contact, factors } = system;
  const { stiffness, grillage } = assembled;
  const rhs = new Float64Array(stiffness.size);
  for (const { node, down, along = 0, across = 0 } of loads) {
    rhs[node * PER_NODE]! += down;
    rhs[node * PER_NODE + 1]! += along;
    rhs[node * PER_NODE + 2]! += across;
  }
  for (const [b, { node, settled_m }] of grillage.bearings.entries()) {
    if (!contact[b]) continue;
    const at = node * PER_NODE;
    const level = settled ? settled_m : 0;
    if (level !== 0)
      for (
        let i = Math.max(0, at - stiffness.width);
        i <= Math.min(stiffness.size - 1, at + stiffness.width);
        i++
      )
        if (i !== at) rhs[i]! -= stiffnessAt(stiffness, i, at) * level;
  }
  for (const [b, { node, settled_m }] of grillage.bearings.entries())
    if (contact[b]) rhs[node * PER_NODE] = settled ? settled_m : 0;
  solveBand(factors, rhs);
  return rhs;
}

/** Upward push of each bearing [N]: 0 where it does not touch. `loads` are those that made `u`. */
export function reactions(system: Factored, u: Float64Array, loads: readonly NodeLoad[]): number[] {
  const { stiffness, grillage } = system.assembled;
  return grillage.bearings.map(({ node }, b) => {
    if (!system.contact[b]) return 0;
    const at = node * PER_NODE;
    let held = 0;
    for (
      let j = Math.max(0, at - stiffness.width);
      j <= Math.min(stiffness.size - 1, at + stiffness.width);
      j++
    )
      held += stiffnessAt(stiffness, at, j) * u[j]!;
    const down = loads.reduce((sum, l) => (l.node === node ? sum + l.down : sum), 0);
    return down - held;
  });
}

/** Forces inside one beam. Moments sag positive; loads stand on nodes, so the shear is the same along it. */
export function beamForces({ assembled }: Factored, e: number, u: Float64Array): BeamForces {
  const { local: k, cos, sin } = assembled.beams[e]!;
  const { from, to } = assembled.grillage.beams[e]!;
  const [a, b] = [from * PER_NODE, to * PER_NODE];
  const [wa, wb] = [u[a]!, u[b]!];
  const along_a = cos * u[a + 1]! + sin * u[a + 2]!;
  const along_b = cos * u[b + 1]! + sin * u[b + 2]!;
  const across_a = cos * u[a + 2]! - sin * u[a + 1]!;
  const across_b = cos * u[b + 2]! - sin * u[b + 1]!;
  return {
    shear: -(k[0]! * wa + k[1]! * along_a + k[3]! * wb + k[4]! * along_b),
    moment_from: k[6]! * wa + k[7]! * along_a + k[9]! * wb + k[10]! * along_b,
    moment_to: -(k[24]! * wa + k[25]! * along_a + k[27]! * wb + k[28]! * along_b),
    torsion: k[14]! * across_a + k[17]! * across_b,
  };
}
