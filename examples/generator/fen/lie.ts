import { meander, nearest, type Creek } from "../creek.ts";
import { hummocks, smoothStep, wander } from "../noise.ts";
import { blot, outsideBy, type Blot, type Spot } from "../polygon.ts";
import type { Random } from "../random.ts";

/** South-west corner and size of the fen's local grid [m]; cells of 1 m. */
export const FEN_GRID = { west: 5000, south: 8000, cols: 190, rows: 170 } as const;

/** The lie of the fen: distances in metres from the grid's south-west corner, heights on the local datum. */
export interface Fen {
  readonly runnel: Creek;
  readonly pools: readonly { readonly id: string; readonly name: string; readonly shape: Blot }[];
  /** Domes of peat over the springs, too soft to stand on. */
  readonly domes: readonly { readonly id: string; readonly name: string; readonly shape: Blot }[];
  readonly edge: (u: number) => number;
  readonly heightAt: (u: number, v: number) => number;
  /** Depth of the peat [m]. */
  readonly peatAt: (u: number, v: number) => number;
}

const DOMES: readonly (readonly [string, Spot, number])[] = [
  ["A", [72, 104], 9],
  ["B", [128, 88], 7],
];
const POOLS: readonly (readonly [string, Spot, number, number])[] = [
  ["A", [102, 116], 6, 4],
  ["B", [56, 62], 5, 7],
  ["C", [146, 58], 7, 4.5],
];

/** Lays out springs, pools and the runnel that drains them, and the surface that carries them. */
export function drawFen(random: Random): Fen {
  const runnel = meander({
    id: "fen-runnel",
    name: "Fen runnel",
    through: [
      [76, 98],
      [92, 76],
      [98, 46],
      [112, 22],
      [118, -4],
    ],
    swing_m: 3,
    wave_m: 26,
    phase: 0.7,
    width_m: [0.8, 1.9],
    bed_m: [41.4, 40.4],
  });
  const pools = POOLS.map(([letter, middle, across, along]) => ({
    id: `pool-${letter.toLowerCase()}`,
    name: `Moss pool ${letter}`,
    shape: blot(random, middle, across, along, 0.18),
  }));
  const domes = DOMES.map(([letter, middle, radius]) => ({
    id: `spring-${letter.toLowerCase()}`,
    name: `Spring dome ${letter}`,
    shape: blot(random, middle, radius, radius * 0.8, 0.12),
  }));
  const border = wander(random, 220, 30);
  const broad = hummocks(random, 220, 14);
  const fine = hummocks(random, 220, 3.5);
  const edge = (u: number): number => 141 + 4 * border(u);
  const heightAt = (u: number, v: number): number => {
    const mineral = Math.max(0, v - edge(u)) * 0.07;
    let z = 41.6 + 0.006 * v + mineral + 0.04 * broad(u, v) + 0.03 * fine(u, v);
    for (const { shape } of domes) z += 0.28 * smoothStep(1.5, -6, outsideBy(shape, u, v));
    for (const { shape } of pools) z -= 0.22 * smoothStep(0.3, -0.8, outsideBy(shape, u, v));
    const { distance, width, bed } = nearest(runnel, u, v);
    return Math.min(z, z + (bed - z) * smoothStep(width / 2 + 0.25, width / 3, distance));
  };
  const peatAt = (u: number, v: number): number =>
    Math.max(0, 4.6 * smoothStep(edge(u) + 2, edge(u) - 45, v) + 0.3 * broad(v, u));
  return { runnel, pools, domes, edge, heightAt, peatAt };
}
