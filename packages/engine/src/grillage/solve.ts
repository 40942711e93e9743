import { DomainError } from "../units/index.ts";
import { copyBand, factorBand, placeIn, solveBand, type Band } from "./band.ts";
import { PER_NODE, freedomsOf, type Assembled } from "./assemble.ts";
import type { BeamForces, Contact, NodeLoad } from "./types.ts";

/** A grillage whose touching bearings are settled: any load can be solved at once. */
export interface Factored {
  readonly assembled: Assembled;
  readonly contact: Contact;
  readonly factors: Band;
  /** False when the bearings that touch cannot hold it: it turns over or falls. */
  readonly stable: boolean;
}

/** Below this share of its own stiffness a pivot is nothing but the weak hold of loose slopes. */
const SINGULAR = 1e-10;

/** Factors the stiffness with the touching bearings held at their level. */
export function factorContact(assembled: Assembled, contact: Contact): Factored {
  const factors = copyBand(assembled.stiffness);
  for (const [b, { node }] of assembled.grillage.bearings.entries())
    if (contact[b]) hold(factors, node * PER_NODE);
  const least = factorBand(factors);
  const touching = contact.filter(Boolean).length;
  return { assembled, contact, factors, stable: touching >= 2 && least > SINGULAR };
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
  const { local, cos, sin } = assembled.beams[e]!;
  const g = freedomsOf(assembled.grillage, e).map((i) => u[i]!);
  const turned = [
    g[0]!,
    cos * g[1]! + sin * g[2]!,
    cos * g[2]! - sin * g[1]!,
    g[3]!,
    cos * g[4]! + sin * g[5]!,
    cos * g[5]! - sin * g[4]!,
  ];
  const force = (row: number): number => turned.reduce((sum, v, j) => sum + local[row * 6 + j]! * v, 0);
  return { moment_from: force(1), moment_to: -force(4), shear: -force(0), torsion: force(2) };
}
