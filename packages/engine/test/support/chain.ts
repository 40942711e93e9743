import { kitGeometry, type Kit } from "../../src/kit/index.ts";
import type { Joint, ModulePart, Part, PlatformPart } from "../../src/layout/types.ts";
import type { LumberSize } from "../../src/materials/index.ts";

/** A chain laid by hand on flat ground, starting north: a length in mm, or a platform left on the named side. */
export type Link = number | "platform-left" | "platform-right" | "platform-ahead";

export interface Chain {
  readonly joints: readonly Joint[];
  readonly parts: readonly Part[];
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

const step = (p: Place, m: number): Place => ({
  ...p,
  x: p.x + Math.round(Math.sin((p.heading * Math.PI) / 180)) * m,
  y: p.y + Math.round(Math.cos((p.heading * Math.PI) / 180)) * m,
});
const turned = (p: Place, by: number): Place => ({ ...p, heading: (p.heading + by + 360) % 360 });

/** Parts and joints of a chain, one branch, each joint on the same support at the same height [m]. */
export function layChain(
  kit: Kit,
  links: readonly Link[],
  support: string,
  height_m: number,
  sizes: readonly LumberSize[],
): Chain {
  const g = kitGeometry(kit, sizes);
  const joints: Joint[] = [];
  const parts: Part[] = [];
  let along_m = 0;
  const joint = (p: Place): string => {
    const id = `j${joints.length + 1}`;
    const deck_m = height_m + g.module_depth_m;
    const at = { x: p.x, y: p.y, heading_deg: p.heading, branch: "b1", along_m };
    joints.push({ id, ...at, ground_m: 0, deck_m, support, support_height_m: height_m, feet: [] });
    return id;
  };
  const module = (length_mm: number, from: string): void => {
    const begin = along_m;
    here = step(here, g.pitch_m(length_mm));
    along_m += g.pitch_m(length_mm);
    const to = joint(here);
    const common = { id: `m${parts.length + 1}`, branch: "b1", outline: [], bridges: [] };
    const part: ModulePart = {
      ...common,
      kind: "module",
      length_m: length_mm / 1000,
      heading_deg: here.heading,
      from,
      to,
      along_m: begin,
    };
    parts.push(part);
    last = to;
  };
  const platform = (out: "left" | "right" | "ahead", from: string): void => {
    const half = g.platform_pitch_m / 2;
    const middle = step(here, half);
    const exits = {
      ahead: joint(step(middle, half)),
      left: joint(step(turned(middle, -90), half)),
      right: joint(step(turned(middle, 90), half)),
    };
    const part: PlatformPart = {
      id: `p${parts.length + 1}`,
      kind: "platform",
      use: "turning",
      branch: "b1",
      side_m: kit.platform.side_mm / 1000,
      x: middle.x,
      y: middle.y,
      heading_deg: here.heading,
      from,
      exits,
      along_m,
      outline: [],
      bridges: [],
    };
    parts.push(part);
    const turn = { left: -90, right: 90, ahead: 0 }[out];
    here = step(turned(middle, turn), half);
    last = exits[out];
  };
  let here: Place = { x: 0, y: 0, heading: 0 };
  let last = joint(here);
  for (const link of links)
    if (typeof link === "number") module(link, last);
    else platform(link.slice("platform-".length) as "left" | "right" | "ahead", last);
  return { joints, parts };
}
