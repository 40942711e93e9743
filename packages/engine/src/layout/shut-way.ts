import { isInside, isShut, ruledArea, type Plot, type Site, type Start, type Zone } from "../site/index.ts";

/**
 * The shut areas that part a start from a plot while the walkway is laid: those that the ground around the start meets,
 * where no unshut ground leads on to the plot. Judged cell by cell of the terrain, eight neighbours: a strip narrower
 * than a cell may be missed, and then the answer is none.
 */
export function shutOnWay(
  site: Site,
  laying: { readonly from: string; readonly to: string },
  start: Start,
  plot: Plot,
): readonly Zone[] {
  const { terrain: r } = site;
  const zones = site.zones.filter((z) => isShut(z, laying.from, laying.to));
  if (zones.length === 0) return [];
  const areas = zones.map(ruledArea);
  const at = (k: number): [number, number] => [
    r.x0 + (k % r.cols) * r.dx,
    r.y0 + Math.floor(k / r.cols) * r.dy,
  ];
  const reach = plot.keep_off_m + plot.reach_m + Math.max(r.dx, r.dy);
  const seen = new Uint8Array(r.values.length);
  const met = new Set<Zone>();
  const stack = [cellOf(site, start)].filter((k) => k >= 0);
  for (const k of stack) seen[k] = 1;
  for (let k = stack.pop(); k !== undefined; k = stack.pop()) {
    const [x, y] = at(k);
    const barring = zones.filter((_, n) => isInside(areas[n]!, x, y));
    if (barring.length > 0) {
      for (const z of barring) met.add(z);
      continue;
    }
    if (Math.hypot(x - plot.x, y - plot.y) <= reach) return [];
    for (const next of around(r.cols, r.rows, k)) {
      if (seen[next] === 1 || Number.isNaN(r.values[next]!)) continue;
      seen[next] = 1;
      stack.push(next);
    }
  }
  return zones.filter((z) => met.has(z));
}

function cellOf({ terrain: r }: Site, { x, y }: Start): number {
  const [i, j] = [Math.round((x - r.x0) / r.dx), Math.round((y - r.y0) / r.dy)];
  return i < 0 || j < 0 || i >= r.cols || j >= r.rows ? -1 : j * r.cols + i;
}

function around(cols: number, rows: number, k: number): number[] {
  const [i, j] = [k % cols, Math.floor(k / cols)];
  const found: number[] = [];
  for (let v = Math.max(0, j - 1); v <= Math.min(rows - 1, j + 1); v++)
    for (let u = Math.max(0, i - 1); u <= Math.min(cols - 1, i + 1); u++)
      if (u !== i || v !== j) found.push(v * cols + u);
  return found;
}

/** Why the way is barred and what would open it, in words a steward can act on. */
export function shutWords(
  zones: readonly Zone[],
  laying: { readonly from: string; readonly to: string },
): string {
  const days = (z: Zone): string =>
    z.use === "seasonal-closure" && z.from !== undefined && z.to !== undefined
      ? `${z.name} (closed from ${z.from} to ${z.to}, month and day)`
      : z.name;
  const isSeason = zones.some((z) => z.use === "seasonal-closure");
  return `The way is barred by ${zones.map(days).join(", ")}: nothing may be laid there between ${laying.from} and ${laying.to}.${isSeason ? " Lay it outside the days of the closure, or lead it round." : ""}`;
}
