import { defineMethod, inputProblem, type Json, type Problem, type Source } from "../formula/index.ts";
import { readGridMap, type GridMap } from "./grid-map.ts";
import { Settle, type SearchSpace } from "./settle.ts";

/**
 * Whole-number arc costs whose ratio is sqrt 2 to 1.5e-6 (a convergent of its continued fraction), so that the
 * path found is a shortest one to that share; its length is then summed with the real sqrt 2.
 */
const STRAIGHT = 408;
const DIAGONAL = 577;

const source: Source = {
  id: "sturtevant-2012",
  title: "Sturtevant (2012), Benchmarks for grid-based pathfinding, IEEE T-CIAIG 4(2)",
  at: "octile movement, no cutting of corners",
  status: "seen",
};

/** Steps of the eight neighbours; arc n + 1 is the step STEPS[n]. */
const STEPS: readonly (readonly [dx: number, dy: number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
];

class OctileSpace implements SearchSpace {
  readonly nodes: number;
  readonly map: GridMap;
  goalX = 0;
  goalY = 0;
  constructor(map: GridMap) {
    this.map = map;
    this.nodes = map.width * map.height;
  }
  isOpen(x: number, y: number): boolean {
    const { width, height, open } = this.map;
    return x >= 0 && y >= 0 && x < width && y < height && open[y * width + x] === 1;
  }
  ahead = (node: number): number => {
    const dx = Math.abs((node % this.map.width) - this.goalX);
    const dy = Math.abs(Math.floor(node / this.map.width) - this.goalY);
    return STRAIGHT * Math.max(dx, dy) + (DIAGONAL - STRAIGHT) * Math.min(dx, dy);
  };
  expand = (node: number, settle: Settle): void => {
    const { width } = this.map;
    const x = node % width;
    const y = (node - x) / width;
    const east = this.isOpen(x + 1, y);
    const south = this.isOpen(x, y + 1);
    const west = this.isOpen(x - 1, y);
    const north = this.isOpen(x, y - 1);
    if (east) settle.relax(node + 1, STRAIGHT, 1);
    if (south) settle.relax(node + width, STRAIGHT, 2);
    if (west) settle.relax(node - 1, STRAIGHT, 3);
    if (north) settle.relax(node - width, STRAIGHT, 4);
    if (south && east && this.isOpen(x + 1, y + 1)) settle.relax(node + width + 1, DIAGONAL, 5);
    if (south && west && this.isOpen(x - 1, y + 1)) settle.relax(node + width - 1, DIAGONAL, 6);
    if (north && west && this.isOpen(x - 1, y - 1)) settle.relax(node - width - 1, DIAGONAL, 7);
    if (north && east && this.isOpen(x + 1, y - 1)) settle.relax(node - width + 1, DIAGONAL, 8);
  };
}

/** Length of the shortest octile path, in cells, or null when the goal cannot be reached. Cells must be on the map. */
export function gridPathLengths(
  map: GridMap,
  queries: readonly (readonly [x0: number, y0: number, x1: number, y1: number])[],
): (number | null)[] {
  const space = new OctileSpace(map);
  const settle = new Settle(space);
  return queries.map(([x0, y0, x1, y1]) => {
    if (!space.isOpen(x0, y0) || !space.isOpen(x1, y1)) return null;
    settle.reset();
    space.goalX = x1;
    space.goalY = y1;
    const from = y0 * map.width + x0;
    const goal = y1 * map.width + x1;
    settle.seed(from, 0, 0);
    return settle.run(Infinity, (node) => node === goal) === goal
      ? walkedLength(settle, map.width, goal)
      : null;
  });
}

function walkedLength(settle: Settle, width: number, goal: number): number {
  let straight = 0;
  let diagonal = 0;
  for (let node = goal; settle.arc[node] !== 0;) {
    const [dx, dy] = STEPS[settle.arc[node]! - 1]!;
    if (dx !== 0 && dy !== 0) diagonal++;
    else straight++;
    node -= dy * width + dx;
  }
  return straight + diagonal * Math.SQRT2;
}

/** `grid.path`: shortest paths on a map of open and closed cells, on the settle loop that also finds walkways. */
export const gridPath = defineMethod<unknown>(
  {
    id: "grid.path",
    title: "Shortest paths on a grid map",
    inputs: [
      { key: "map", title: "Text of the map (`map_file` in the shell)", type: "string" },
      { key: "queries", title: "List of [x0, y0, x1, y1]", type: "array" },
    ],
    outputs: [
      {
        key: "lengths",
        title: "Length of each shortest path in cells, null where unreachable",
        type: "array",
      },
    ],
    validity:
      "Octile moves: a diagonal only if both cells beside it are open. Lengths agree with exact arithmetic to 1.5e-6.",
    sources: [source],
  },
  (input) => {
    const read = readGridMap(input["map"] as string);
    if ("problems" in read) return read;
    const problems = (input["queries"] as readonly Json[]).flatMap((q, i) => queryFault(q, i, read.map));
    if (problems.length > 0) return { problems };
    return {
      lengths: gridPathLengths(read.map, input["queries"] as unknown as [number, number, number, number][]),
    };
  },
);

function queryFault(query: Json, index: number, map: GridMap): Problem[] {
  const place = `queries[${index}]`;
  if (!Array.isArray(query) || query.length !== 4 || !query.every((v) => Number.isInteger(v)))
    return [inputProblem(place, query, "must be four whole numbers", "Give [x0, y0, x1, y1].")];
  const [x0, y0, x1, y1] = query as [number, number, number, number];
  const off = [x0, x1].some((x) => x < 0 || x >= map.width) || [y0, y1].some((y) => y < 0 || y >= map.height);
  return off
    ? [
        inputProblem(
          place,
          query,
          `lies off the map of ${map.width} x ${map.height} cells`,
          "Give cells on the map.",
        ),
      ]
    : [];
}
