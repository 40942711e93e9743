import type { Tin } from "./tin.ts";

/** Corners joined to each corner by an edge: `list` from `start[c]` to `start[c + 1]`. */
export interface Neighbours {
  readonly start: Uint32Array;
  readonly list: Uint32Array;
}

/** Neighbours of every corner of a network. */
export function neighboursOf({ z, triangles, halfedges }: Tin): Neighbours {
  const start = new Uint32Array(z.length + 1);
  const eachPair = (visit: (a: number, b: number) => void): void => {
    for (let e = 0; e < triangles.length; e++) {
      const a = triangles[e]!;
      const b = triangles[e % 3 === 2 ? e - 2 : e + 1]!;
      visit(a, b);
      if (halfedges[e] === -1) visit(b, a);
    }
  };
  eachPair((a) => (start[a + 1] = start[a + 1]! + 1));
  for (let c = 0; c < z.length; c++) start[c + 1] = start[c + 1]! + start[c]!;
  const list = new Uint32Array(start[z.length]!);
  const next = start.slice();
  eachPair((a, b) => {
    list[next[a]!] = b;
    next[a] = next[a]! + 1;
  });
  return { start, list };
}
