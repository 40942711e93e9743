import { partLines } from "./route-lines.ts";
import type { Layout } from "./types.ts";

/**
 * Lowest ground at the joints on the way from the start to each joint, its own included [m above the site datum]: the
 * place where somebody who walks to it on foot is cut off first. Ground between joints is not looked at.
 */
export function lowestOnWay(layout: Layout): ReadonlyMap<string, number> {
  const ground = new Map(layout.joints.map((j) => [j.id, j.ground_m]));
  const before = new Map<string, string>();
  for (const { part } of partLines(layout)) {
    const ends = part.kind === "module" ? [part.to] : Object.values(part.exits);
    for (const end of ends) before.set(end, part.from);
  }
  const lowest = new Map<string, number>();
  const find = (id: string): number => {
    const known = lowest.get(id);
    if (known !== undefined) return known;
    const last = before.get(id);
    const own = ground.get(id)!;
    const found = last === undefined ? own : Math.min(own, find(last));
    lowest.set(id, found);
    return found;
  };
  for (const { id } of layout.joints) find(id);
  return lowest;
}
