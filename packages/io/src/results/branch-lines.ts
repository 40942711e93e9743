import type { Joint, Layout, Part } from "@causey/engine/layout";
import type { Position } from "../layer-form/index.ts";

export interface BranchLine {
  readonly id: string;
  readonly from: string;
  readonly to_plot: string;
  readonly length_m: number;
  /** Middle line from joint to joint, in the site's grid. */
  readonly line: readonly Position[];
}

/** The middle lines of a layout; a branch without a part has no line to draw. */
export function branchLines(layout: Layout): readonly BranchLine[] {
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  const parts = new Map(layout.parts.map((p) => [p.id, p]));
  return layout.branches.flatMap(({ id, from, to_plot, length_m, ...branch }) => {
    const along = branch.parts.flatMap((part) => middleLine(parts.get(part), joints));
    const line = along.filter(([x, y], i) => i === 0 || x !== along[i - 1]![0] || y !== along[i - 1]![1]);
    return line.length < 2 ? [] : [{ id, from, to_plot, length_m, line }];
  });
}

function middleLine(part: Part | undefined, joints: ReadonlyMap<string, Joint>): Position[] {
  if (part === undefined) return [];
  const to = part.kind === "module" ? joints.get(part.to) : part;
  return [joints.get(part.from), to].flatMap((p) => (p === undefined ? [] : [[p.x, p.y] as const]));
}
