import { DomainError } from "../units/index.ts";
import type { Joint, Layout, Part } from "./types.ts";

/** A part with its middle line: a module's from joint to joint, a platform's from the entry straight across. */
export interface PartLine {
  readonly part: Part;
  readonly from: Joint;
  readonly to: Joint;
  readonly length_m: number;
}

/** The middle line of every part; together they are as long as the walkway. */
export function partLines(layout: Layout): PartLine[] {
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  const find = (id: string): Joint => {
    const joint = joints.get(id);
    if (!joint) throw new DomainError("no-such-joint", { joint: id });
    return joint;
  };
  return layout.parts.map((part) => {
    const from = find(part.from);
    const to = find(part.kind === "module" ? part.to : part.exits.ahead);
    return { part, from, to, length_m: Math.hypot(to.x - from.x, to.y - from.y) };
  });
}
