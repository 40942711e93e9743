import type { SearchInput } from "../search-input.ts";
import type { LaidParts } from "../types.ts";
import type { Spot } from "./guide.ts";

/** A stretch of walkway that is too long without a place to pass. */
export interface PassingGap {
  readonly branch: string;
  /** The part on which the stretch becomes too long. */
  readonly part: string;
  readonly place: Spot;
  /** Ids of the places to pass at its ends: platforms, or the joints where the walkway begins and ends. */
  readonly from: string;
  readonly to: string;
  readonly length_m: number;
}

const SLACK = 1e-6;

/**
 * Stretches longer than the plan's interval between two places to pass: the start, platforms, ends. Measured along the
 * walkway from the middle of one platform to the middle of the next. Empty when no interval is asked for.
 */
export function passingGaps(laid: LaidParts, { choice, facts }: SearchInput): PassingGap[] {
  const interval = choice.passing_every_m;
  if (interval === null) return [];
  const joints = new Map(laid.joints.map((j) => [j.id, j]));
  const parts = new Map(laid.parts.map((p) => [p.id, p]));
  const half = (facts.platform_side_m + facts.gap_m) / 2;
  return laid.branches.flatMap((branch) => {
    const gaps: PassingGap[] = [];
    let [from, since] = parts.get(branch.from)?.kind === "platform" ? [branch.from, half] : [branch.from, 0];
    let part = "";
    let place: Spot = [0, 0];
    const close = (to: string): void => {
      if (since > interval + SLACK) gaps.push({ branch: branch.id, part, place, from, to, length_m: since });
    };
    for (const id of branch.parts) {
      const p = parts.get(id)!;
      const before = since;
      since += p.kind === "module" ? p.length_m + facts.gap_m : half;
      if (before <= interval + SLACK || part === "") {
        const joint = joints.get(p.from)!;
        [part, place] = [id, [joint.x, joint.y]];
      }
      if (p.kind === "module") continue;
      close(id);
      [from, since, part] = [id, half, ""];
    }
    const last = parts.get(branch.parts.at(-1) ?? "");
    if (last?.kind === "module") close(last.to);
    return gaps;
  });
}
