import { meander, nearest, type Creek } from "./creek.ts";
import { hummocks, smoothStep, wander } from "./noise.ts";
import { blot, outsideBy, type Blot, type Spot } from "./polygon.ts";
import type { Random } from "./random.ts";

/** South-west corner and size of the local grid [m]; cells of 1 m. */
export const GRID = { west: 1000, south: 2000, cols: 260, rows: 200 } as const;

export interface Pool {
  readonly id: string;
  readonly name: string;
  readonly shape: Blot;
}

/** The lie of the land. Distances in metres from the grid's south-west corner, heights on the local datum. */
export interface Meadow {
  readonly creeks: readonly Creek[];
  readonly pools: readonly Pool[];
  readonly rushes: Blot;
  /** Foot of the upland, edge of the platform towards the bay, and the line between high and low meadow. */
  readonly uplandFoot: (u: number) => number;
  readonly bayEdge: (u: number) => number;
  readonly highLow: (u: number) => number;
  readonly heightAt: (u: number, v: number) => number;
}

function drawCreeks(): Creek[] {
  return [
    meander({
      id: "quillet-creek",
      name: "Quillet Creek",
      through: [
        [-6, 128],
        [32, 116],
        [72, 102],
        [98, 76],
        [104, 40],
        [108, 2],
      ],
      swing_m: 6,
      wave_m: 42,
      phase: 0.4,
      width_m: [2.2, 4],
      bed_m: [0.05, -0.25],
    }),
    meander({
      id: "rushy-gut",
      name: "Rushy Gut",
      through: [
        [188, 148],
        [182, 118],
        [172, 84],
        [178, 44],
        [186, 2],
      ],
      swing_m: 6,
      wave_m: 34,
      phase: 1.1,
      width_m: [1, 3.6],
      bed_m: [0.9, -0.2],
    }),
    meander({
      id: "short-gut",
      name: "Short Gut",
      through: [
        [143, 84],
        [139, 58],
        [144, 30],
        [138, 2],
      ],
      swing_m: 4,
      wave_m: 26,
      phase: 2.2,
      width_m: [0.9, 2.4],
      bed_m: [0.95, -0.1],
    }),
  ];
}

function drawPools(random: Random): Pool[] {
  const pools: readonly [string, Spot, number, number][] = [
    ["a", [226, 66], 7, 4.6],
    ["b", [206, 95], 4.5, 3.4],
    ["c", [152, 96], 3.2, 4.4],
    ["d", [36, 60], 5.4, 4],
    ["e", [238, 98], 3.4, 3],
  ];
  return pools.map(([letter, middle, across, along]) => ({
    id: `pool-${letter}`,
    name: `Pool ${letter.toUpperCase()}`,
    shape: blot(random, middle, across, along, 0.22),
  }));
}

/** Lays out creeks, pools and rushes, and the surface that carries them. */
export function drawMeadow(random: Random): Meadow {
  const creeks = drawCreeks();
  const pools = drawPools(random);
  const rushes = blot(random, [92, 132], 13, 7, 0.2);
  const [foot, edge, middle] = [wander(random, 280, 34), wander(random, 280, 26), wander(random, 280, 40)];
  const broad = hummocks(random, 280, 18);
  const fine = hummocks(random, 280, 5);
  const uplandFoot = (u: number): number => 171 + 5 * foot(u);
  const bayEdge = (u: number): number => 15 + 3 * edge(u);
  const highLow = (u: number): number => 112 + 3 * middle(u);
  const open = (u: number, v: number): number => {
    const meadow = 1.36 + 0.3 * smoothStep(bayEdge(u), uplandFoot(u), v);
    const upland = Math.max(0, v - uplandFoot(u)) * 0.06;
    const flat = 0.12 + 0.012 * v;
    const grass = meadow + upland + 0.045 * broad(u, v) + 0.015 * fine(u, v);
    return flat + (grass - flat) * smoothStep(bayEdge(u) - 2, bayEdge(u) + 2, v);
  };
  const heightAt = (u: number, v: number): number => {
    let height = open(u, v);
    for (const pool of pools) height -= 0.28 * smoothStep(0.4, -0.9, outsideBy(pool.shape, u, v));
    for (const creek of creeks) height = Math.min(height, channelHeight(creek, u, v, height));
    return height;
  };
  return { creeks, pools, rushes, uplandFoot, bayEdge, highLow, heightAt };
}

/** Steep banks down to a bed two thirds as wide as the top. */
function channelHeight(creek: Creek, u: number, v: number, bank: number): number {
  const { distance, width, bed } = nearest(creek, u, v);
  return bank + (bed - bank) * smoothStep(width / 2 + 0.3, width / 3, distance);
}
