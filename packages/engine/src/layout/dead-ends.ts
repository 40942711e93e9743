import { partLines, type PartLine } from "./route-lines.ts";
import type { Layout } from "./types.ts";

/** An end of the walkway that leads nowhere on, and where somebody with a cart can turn for the last time. */
export interface DeadEnd {
  readonly joint: string;
  readonly branch: string;
  /** Plots reached there. */
  readonly plots: readonly string[];
  /** The last platform before the end; null = there is none, and the last place to turn is the start. */
  readonly last_turn: string | null;
  /** Where the sign stands: the joint over which that platform is left; the first joint when there is none. */
  readonly sign_at: string;
  /** From the sign to the end, along the walkway; 0 = the end is on the platform itself. */
  readonly back_m: number;
}

/**
 * Every dead end of a layout, in the order of its joints. A walkway is a tree, so each of its ends is one: nobody can
 * go on from there to where they came from. An end counts where a part arrives and none goes on; edges of a platform
 * that only carry it do not.
 */
export function deadEnds(layout: Layout): DeadEnd[] {
  const lines = partLines(layout);
  const leaving = new Set(layout.parts.map((p) => p.from));
  const arrived = new Set(layout.reached.map((r) => r.joint));
  const into = new Map<string, PartLine>();
  for (const line of lines) for (const joint of endsOf(line)) into.set(joint, line);
  return layout.joints.flatMap((joint): DeadEnd[] => {
    const last = into.get(joint.id);
    if (!last || leaving.has(joint.id)) return [];
    const isSpareEdge = last.part.kind === "platform" && !arrived.has(joint.id);
    if (isSpareEdge && usesOther(last, leaving, arrived)) return [];
    if (isSpareEdge && joint.id !== last.to.id) return [];
    const sign = signOf(joint.id, into, layout.joints[0]!.id);
    const plots = layout.reached.filter((r) => r.joint === joint.id).map((r) => r.plot);
    return [{ joint: joint.id, branch: joint.branch, plots, ...sign }];
  });
}

const endsOf = ({ part }: PartLine): string[] =>
  part.kind === "module" ? [part.to] : [part.exits.ahead, part.exits.left, part.exits.right];

/** Whether a platform is left, or a plot reached, over any of its edges. */
const usesOther = (line: PartLine, leaving: ReadonlySet<string>, arrived: ReadonlySet<string>): boolean =>
  endsOf(line).some((id) => leaving.has(id) || arrived.has(id));

/** Walks back from an end to the last platform. */
function signOf(
  end: string,
  into: ReadonlyMap<string, PartLine>,
  first: string,
): Pick<DeadEnd, "last_turn" | "sign_at" | "back_m"> {
  let at = end;
  let back_m = 0;
  for (let line = into.get(at); line; line = into.get(at)) {
    if (line.part.kind === "platform") return { last_turn: line.part.id, sign_at: at, back_m };
    back_m += line.length_m;
    at = line.part.from;
  }
  return { last_turn: null, sign_at: at === end ? first : at, back_m };
}
