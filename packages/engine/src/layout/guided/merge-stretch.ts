import { branchLetter } from "../assemble.ts";
import type { Branch, Joint, LaidParts, Part } from "../types.ts";

/**
 * Joins a refitted stretch to what lies: its first joint is the one that lies there, its first branch goes on from there
 * under the branch's own letter. New joints and branches get tags that no earlier part of the walkway ever had, since
 * boards with the old tags may lie about.
 *
 * before  the layout as planned: its tags are not given again
 * part    the planned part that led on from the joint
 * walk_m  from the start to the joint
 */
export function mergeStretch(
  now: LaidParts,
  before: LaidParts,
  part: Part,
  from: Joint,
  walk_m: number,
  stretch: LaidParts,
): LaidParts {
  if (stretch.parts.length === 0) return now;
  const tags = new Tags(now, before, part, from, stretch);
  const root = stretch.joints[0]!.id;
  const isOwn = (branch: string): boolean => branch === stretch.branches[0]!.id;
  const along = (branch: string): number => (isOwn(branch) ? part.along_m : 0);
  const joints = stretch.joints
    .filter((j) => j.id !== root)
    .map((j) => ({
      ...j,
      id: tags.joint(j.id),
      branch: tags.branch(j.branch),
      along_m: j.along_m + along(j.branch),
    }));
  const parts = stretch.parts.map((p) => ({ ...tags.part(p), along_m: p.along_m + along(p.branch) }));
  const branches = stretch.branches.map((b): Branch => ({
    ...b,
    id: tags.branch(b.id),
    from: isOwn(b.id) ? tags.origin : tags.partId(b.from),
    parts: b.parts.map((id) => tags.partId(id)),
    length_m: b.length_m + along(b.id),
  }));
  const reached = stretch.reached
    .filter((r) => !now.reached.some((known) => known.plot === r.plot))
    .map((r) => ({ ...r, joint: tags.joint(r.joint), walk_m: r.walk_m + walk_m }));
  const [own, ...others] = branches;
  const known = now.branches.find((b) => b.id === own!.id);
  const joined = known ? { ...own!, from: known.from, parts: [...known.parts, ...own!.parts] } : own!;
  return {
    ...now,
    joints: [...now.joints, ...joints],
    parts: [...now.parts, ...parts],
    branches: [...now.branches.filter((b) => b !== known), joined, ...others].sort(byPlan(before)),
    reached: [...now.reached, ...reached],
  };
}

/** Planned branches keep their order; new ones come after them. */
const byPlan = (before: LaidParts) => {
  const place = new Map(before.branches.map((b, n) => [b.id, n]));
  return (a: Branch, b: Branch): number => (place.get(a.id) ?? Infinity) - (place.get(b.id) ?? Infinity) || 0;
};

class Tags {
  /** What the stretch's first branch begins at. */
  readonly origin: string;
  private readonly joints = new Map<string, string>();
  private readonly branches = new Map<string, string>();
  private readonly parts = new Map<string, string>();

  constructor(now: LaidParts, before: LaidParts, part: Part, from: Joint, stretch: LaidParts) {
    const planned = before.branches.find((b) => b.parts.includes(part.id))!;
    this.origin = planned.from;
    const last = Math.max(...[...before.joints, ...now.joints].map((j) => Number(j.id.slice(1))));
    stretch.joints.forEach((j, n) => this.joints.set(j.id, n === 0 ? from.id : `J${last + n}`));
    const used = new Set([...before.branches, ...now.branches].map((b) => b.id));
    let letter = 0;
    stretch.branches.forEach((b, n) => {
      if (n === 0) return this.branches.set(b.id, planned.id);
      while (used.has(branchLetter(letter))) letter++;
      used.add(branchLetter(letter));
      return this.branches.set(b.id, branchLetter(letter));
    });
    const laid = planned.parts.indexOf(part.id);
    for (const [n, b] of stretch.branches.entries())
      b.parts.forEach((id, k) =>
        this.parts.set(id, `${this.branches.get(b.id)!}${k + 1 + (n === 0 ? laid : 0)}`),
      );
  }

  joint = (id: string): string => this.joints.get(id)!;
  branch = (id: string): string => this.branches.get(id)!;
  partId = (id: string): string => this.parts.get(id)!;

  part(p: Part): Part {
    const own = { id: this.partId(p.id), branch: this.branch(p.branch), from: this.joint(p.from) };
    if (p.kind === "module") return { ...p, ...own, to: this.joint(p.to) };
    const { ahead, left, right } = p.exits;
    return {
      ...p,
      ...own,
      exits: { ahead: this.joint(ahead), left: this.joint(left), right: this.joint(right) },
    };
  }
}
