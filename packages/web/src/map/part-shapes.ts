import type { Kit } from "@causey/engine/kit";
import type { Joint, Layout, ModulePart, Part } from "@causey/engine/layout";
import { linePath, polygonsPath } from "./ground-path.ts";
import type { XY } from "./view.ts";

/** One part as it is drawn, in metres from the map's origin. */
export interface PartShape {
  readonly id: string;
  readonly outline: string;
  /** Stringers of a module, or the crossed diagonals of a platform. */
  readonly lines: string;
}

export function partShapes(layout: Layout, kit: Kit, origin: XY): PartShape[] {
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  return layout.parts.map((part) => ({
    id: part.id,
    outline: polygonsPath(part.outline, origin),
    lines: part.kind === "module" ? stringers(part, joints, kit, origin) : diagonals(part, origin),
  }));
}

const overall = (kit: Kit): number => kit.stringers.overall_mm / 1000;

function stringers(part: ModulePart, joints: ReadonlyMap<string, Joint>, kit: Kit, origin: XY): string {
  const [a, b] = [joints.get(part.from), joints.get(part.to)];
  if (!a || !b) return "";
  const half = overall(kit) / 2;
  const offsets = kit.stringers.count === 3 ? [-half, 0, half] : [-half, half];
  return offsets
    .map((o) => linePath([aside(a, part.heading_deg, o), aside(b, part.heading_deg, o)], origin))
    .join("");
}

/** A point to the right of another, seen along a heading. */
function aside({ x, y }: { readonly x: number; readonly y: number }, heading_deg: number, right: number): XY {
  const heading = (heading_deg * Math.PI) / 180;
  return [x + Math.cos(heading) * right, y - Math.sin(heading) * right];
}

function diagonals(part: Part, origin: XY): string {
  const [a, b, c, d] = part.outline[0]?.[0] ?? [];
  return a && b && c && d ? linePath([a, c], origin) + linePath([b, d], origin) : "";
}

/** Joints as small bars across the walkway, a little wider than the stringers. */
export function jointBars(layout: Layout, kit: Kit, origin: XY): string {
  const reach = overall(kit) * 0.62;
  return layout.joints
    .map((j) => linePath([aside(j, j.heading_deg, -reach), aside(j, j.heading_deg, reach)], origin))
    .join("");
}

/** Ground under the feet of the supports. */
export const feetPath = (layout: Layout, origin: XY): string =>
  layout.joints.map((joint) => polygonsPath(joint.feet, origin)).join("");
