import type { Branch, LaidParts, Part, PlatformPart } from "../types.ts";
import type { Spot } from "./guide.ts";

/** A branch of a layout as a guide: its middle line, where it branches off, and the plots it reaches. */
export interface BranchGuide {
  readonly branch: string;
  /** Joints, and middles of platforms, in the order of walking. */
  readonly stops: readonly { readonly joint: string | null; readonly at: Spot }[];
  /** Number of the branch it leaves, the platform there and its middle; null = it begins at the start. */
  readonly parent: { readonly line: number; readonly platform: string; readonly at: Spot } | null;
  /** Plots in the order of walking. */
  readonly arrivals: readonly { readonly plot: string; readonly joint: string; readonly at: Spot }[];
}

/** The branches of a layout as guides, in its own order: a branch comes after the one it leaves. */
export function branchGuides(laid: LaidParts): BranchGuide[] {
  const places = new Map(laid.joints.map((j) => [j.id, [j.x, j.y] as Spot]));
  const parts = new Map(laid.parts.map((p) => [p.id, p]));
  const begun = new Set(laid.branches.flatMap((b) => parts.get(b.parts[0] ?? "")?.from ?? []));
  return laid.branches.map((branch) => {
    const own = branch.parts.map((id) => parts.get(id)!);
    const from = parts.get(branch.from);
    const platform = from?.kind === "platform" ? from : null;
    const joints = own.length > 0 ? jointsAlong(own, laid, begun) : [reachedJoint(branch, laid)];
    const middles = own.map((p): Spot | null => (p.kind === "platform" ? [p.x, p.y] : null));
    const stops = joints.flatMap((joint, n): { joint: string | null; at: Spot }[] => {
      const middle = middles[n - 1];
      const stop = { joint, at: places.get(joint)! };
      return middle ? [{ joint: null, at: middle }, stop] : [stop];
    });
    const arrivals = laid.reached
      .filter((r) => joints.includes(r.joint) && (own.length > 0 || r.plot === branch.to_plot))
      .sort((a, b) => a.walk_m - b.walk_m)
      .map((r) => ({ plot: r.plot, joint: r.joint, at: places.get(r.joint)! }));
    const at: Spot | null = platform && [platform.x, platform.y];
    return {
      branch: branch.id,
      stops: at ? [{ joint: null, at }, ...stops] : stops,
      parent:
        platform && at
          ? { line: laid.branches.findIndex((b) => b.id === platform.branch), platform: platform.id, at }
          : null,
      arrivals,
    };
  });
}

/** A branch without parts reaches its plot from the very edge of a platform. */
const reachedJoint = (branch: Branch, laid: LaidParts): string =>
  laid.reached.find((r) => r.plot === branch.to_plot)?.joint ?? laid.joints[0]!.id;

function jointsAlong(own: readonly Part[], laid: LaidParts, begun: ReadonlySet<string>): string[] {
  const last = (p: PlatformPart): string => {
    const exits = [p.exits.ahead, p.exits.left, p.exits.right].filter((id) => !begun.has(id));
    return exits.find((id) => laid.reached.some((r) => r.joint === id)) ?? p.exits.ahead;
  };
  return [
    own[0]!.from,
    ...own.map((part, n) => (part.kind === "module" ? part.to : (own[n + 1]?.from ?? last(part)))),
  ];
}
