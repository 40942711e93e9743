import type { Layout } from "@causey/engine/layout";
import { signedDistance } from "@causey/engine/site";
import type { XY } from "./view.ts";

/** Tag of the part nearest to a ground point, if its outline lies within `reach` of it [m]; else null. */
export function partAt(layout: Layout, [x, y]: XY, reach: number): string | null {
  let nearest: string | null = null;
  let least = reach;
  for (const part of layout.parts) {
    const distance = signedDistance(part.outline, x, y);
    if (distance < least) [nearest, least] = [part.id, distance];
  }
  return nearest;
}
