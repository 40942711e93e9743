import { DomainError } from "../units/index.ts";
import type { Beam, GrillageNode } from "./types.ts";

/**
 * Stiffness of one beam on the degrees of freedom (w, dw/dx, dw/dy) of its two nodes, 6 x 6 by rows, w down.
 *
 * Timoshenko's beam with the exact stiffness of a prismatic member loaded at its ends; ends free of moment are
 * condensed out. `local` is the same matrix on (w, slope along the beam, slope across it).
 */
export interface BeamStiffness {
  readonly local: Float64Array;
  readonly global: Float64Array;
  readonly length: number;
  readonly cos: number;
  readonly sin: number;
}

const SIZE = 6;

function bending(k: Float64Array, L: number, { ei, ga }: Beam): void {
  const phi = ga === null ? 0 : (12 * ei) / (ga * L * L);
  const c = ei / (L ** 3 * (1 + phi));
  const rows: readonly (readonly [number, readonly [number, number, number, number]])[] = [
    [0, [12, 6 * L, -12, 6 * L]],
    [1, [6 * L, (4 + phi) * L * L, -6 * L, (2 - phi) * L * L]],
    [3, [-12, -6 * L, 12, -6 * L]],
    [4, [6 * L, (2 - phi) * L * L, -6 * L, (4 + phi) * L * L]],
  ];
  const columns = [0, 1, 3, 4] as const;
  for (const [i, values] of rows)
    for (const [j, column] of columns.entries()) k[i * SIZE + column] = c * values[j]!;
}

function torsion(k: Float64Array, L: number, { gj }: Beam): void {
  const t = gj / L;
  k[2 * SIZE + 2] = t;
  k[5 * SIZE + 5] = t;
  k[2 * SIZE + 5] = -t;
  k[5 * SIZE + 2] = -t;
}

/** Takes the stiffness of one degree of freedom out: its force becomes zero. */
function condense(k: Float64Array, r: number): void {
  const pivot = k[r * SIZE + r]!;
  const scale = Math.max(...Array.from({ length: SIZE }, (_, i) => Math.abs(k[i * SIZE + i]!)), 1e-300);
  if (pivot > 1e-9 * scale) {
    const row = k.slice(r * SIZE, r * SIZE + SIZE);
    for (let i = 0; i < SIZE; i++)
      for (let j = 0; j < SIZE; j++) k[i * SIZE + j]! -= (row[i]! * row[j]!) / pivot;
  }
  for (let i = 0; i < SIZE; i++) {
    k[r * SIZE + i] = 0;
    k[i * SIZE + r] = 0;
  }
}

/** Global slopes (dw/dx, dw/dy) to slopes along and across the beam, and back: the turn is its own transpose. */
function turned(local: Float64Array, cos: number, sin: number): Float64Array {
  const T = new Float64Array(SIZE * SIZE);
  for (const at of [0, 3]) {
    T[at * SIZE + at] = 1;
    T[(at + 1) * SIZE + at + 1] = cos;
    T[(at + 1) * SIZE + at + 2] = sin;
    T[(at + 2) * SIZE + at + 1] = -sin;
    T[(at + 2) * SIZE + at + 2] = cos;
  }
  const half = new Float64Array(SIZE * SIZE);
  const full = new Float64Array(SIZE * SIZE);
  for (let i = 0; i < SIZE; i++)
    for (let j = 0; j < SIZE; j++)
      for (let m = 0; m < SIZE; m++) half[i * SIZE + j]! += local[i * SIZE + m]! * T[m * SIZE + j]!;
  for (let i = 0; i < SIZE; i++)
    for (let j = 0; j < SIZE; j++)
      for (let m = 0; m < SIZE; m++) full[i * SIZE + j]! += T[m * SIZE + i]! * half[m * SIZE + j]!;
  return full;
}

/** Throws `DomainError` on a beam without length or with a stiffness that is not above zero. */
export function beamStiffness(beam: Beam, nodes: readonly GrillageNode[]): BeamStiffness {
  const a = nodes[beam.from];
  const b = nodes[beam.to];
  if (!a || !b) throw new DomainError("beam-without-node", { from: beam.from, to: beam.to });
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (!(length > 0) || !(beam.ei > 0) || !(beam.gj >= 0) || (beam.ga !== null && !(beam.ga > 0)))
    throw new DomainError("beam-without-stiffness", { length, ei: beam.ei, gj: beam.gj, ga: beam.ga });
  const [cos, sin] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const local = new Float64Array(SIZE * SIZE);
  bending(local, length, beam);
  torsion(local, length, beam);
  if (beam.free_from) for (const r of [1, 2]) condense(local, r);
  if (beam.free_to) for (const r of [4, 5]) condense(local, r);
  const global = sin === 0 && cos === 1 ? local : turned(local, cos, sin);
  return { local, global, length, cos, sin };
}
