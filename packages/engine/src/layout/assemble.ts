import { rectangle, type Polygons } from "../site/index.ts";
import type { LayoutFacts } from "./facts.ts";
import type { JointSpace } from "./joint-space.ts";
import { headingOf, placeOf } from "./lattice.ts";
import type { JointVisit, Network, NextPart } from "./network.ts";

/** A joint with its place, before the deck's profile gives it a height and a support. */
export interface PlacedJoint {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly point: number;
  readonly orientation: 0 | 1;
  readonly heading_deg: number;
  readonly branch: string;
  readonly along_m: number;
  readonly walk_m: number;
  readonly ground_m: number;
  /** Bit n: support kind n may stand here. */
  readonly kinds: number;
}

export interface PlacedModule {
  readonly id: string;
  readonly kind: "module";
  readonly branch: string;
  readonly length: number;
  readonly heading_deg: number;
  readonly from: string;
  readonly to: string;
  readonly along_m: number;
  readonly outline: Polygons;
}

export interface PlacedPlatform {
  readonly id: string;
  readonly kind: "platform";
  readonly branch: string;
  readonly x: number;
  readonly y: number;
  readonly point: number;
  readonly heading_deg: number;
  readonly from: string;
  readonly exits: { readonly ahead: string; readonly left: string; readonly right: string };
  readonly along_m: number;
  readonly outline: Polygons;
}

export interface PlacedBranch {
  readonly id: string;
  readonly from: string;
  readonly parts: string[];
  to: number | null;
  length_m: number;
}

/** A network laid out in real parts, deck heights still open. */
export interface PlacedNetwork {
  readonly joints: PlacedJoint[];
  readonly parts: (PlacedModule | PlacedPlatform)[];
  readonly branches: PlacedBranch[];
  readonly arrivals: { readonly plot: number; readonly joint: string; readonly walk_m: number }[];
}

/** What laying out reads of a space. */
export type PlacingSpace = Pick<JointSpace, "l" | "table" | "exitOf">;

/** Gives every part and joint of a network its tag and place, branch after branch, in the order of walking. */
export function placeNetwork(
  network: Network,
  space: PlacingSpace,
  facts: LayoutFacts,
  startId: string,
): PlacedNetwork {
  const placer = new Placer(space, facts);
  placer.lay(network.root, startId, 0);
  return placer.placed;
}

interface Waiting {
  readonly visit: JointVisit;
  readonly joint: PlacedJoint;
  readonly from: string;
  readonly walk_m: number;
}

class Placer {
  readonly placed: PlacedNetwork = { joints: [], parts: [], branches: [], arrivals: [] };
  private readonly space: PlacingSpace;
  private readonly facts: LayoutFacts;

  constructor(space: PlacingSpace, facts: LayoutFacts) {
    this.space = space;
    this.facts = facts;
  }

  lay(root: JointVisit, startId: string, walk: number): void {
    const first = this.joint(root.node, "A", 0, walk);
    const waiting: Waiting[] = [{ visit: root, joint: first, from: startId, walk_m: walk }];
    for (let next = waiting.shift(); next; next = waiting.shift()) this.layBranch(next, waiting);
  }

  private layBranch(begin: Waiting, waiting: Waiting[]): void {
    const id = branchLetter(this.placed.branches.length);
    const branch: PlacedBranch = { id, from: begin.from, parts: [], to: null, length_m: 0 };
    this.placed.branches.push(branch);
    let { visit, joint } = begin;
    for (;;) {
      for (const plot of visit.arrives) {
        this.placed.arrivals.push({ plot, joint: joint.id, walk_m: joint.walk_m });
        branch.to = plot;
      }
      if (visit.next === null) return;
      if (visit.next.kind === "module") {
        joint = this.layModule(visit.next.length, joint, visit.next.to, branch);
        visit = visit.next.to;
      } else {
        const on = this.layPlatform(visit.next, joint, branch, waiting);
        joint = on.joint;
        visit = on.visit;
      }
    }
  }

  private layModule(length: number, from: PlacedJoint, to: JointVisit, branch: PlacedBranch): PlacedJoint {
    const pitch = this.facts.lengths_m[length]! + this.facts.gap_m;
    const end = this.joint(to.node, branch.id, branch.length_m + pitch, from.walk_m + pitch);
    const id = `${branch.id}${branch.parts.length + 1}`;
    this.placed.parts.push({
      id,
      kind: "module",
      branch: branch.id,
      length,
      heading_deg: from.heading_deg,
      from: from.id,
      to: end.id,
      along_m: branch.length_m,
      outline: [
        [
          rectangle(
            (from.x + end.x) / 2,
            (from.y + end.y) / 2,
            from.heading_deg,
            this.facts.lengths_m[length]!,
            this.facts.width_m,
          ),
        ],
      ],
    });
    branch.parts.push(id);
    branch.length_m += pitch;
    return end;
  }

  private layPlatform(
    part: Extract<NextPart, { kind: "platform" }>,
    from: PlacedJoint,
    branch: PlacedBranch,
    waiting: Waiting[],
  ): { joint: PlacedJoint; visit: JointVisit } {
    const pitch = this.facts.platform_side_m + this.facts.gap_m;
    const id = `${branch.id}${branch.parts.length + 1}`;
    const [x, y] = placeOf(this.space.l, part.ci, part.cj);
    const edge = (turn: number): PlacedJoint =>
      this.joint(
        this.space.exitOf(part.ci, part.cj, (part.entry + turn) & 3),
        branch.id,
        branch.length_m + pitch,
        from.walk_m + pitch,
      );
    const exits = { ahead: edge(0), left: edge(3), right: edge(1) };
    this.placed.parts.push({
      id,
      kind: "platform",
      branch: branch.id,
      x,
      y,
      point: part.cj * this.space.l.nx + part.ci,
      heading_deg: from.heading_deg,
      from: from.id,
      exits: { ahead: exits.ahead.id, left: exits.left.id, right: exits.right.id },
      along_m: branch.length_m,
      outline: [[rectangle(x, y, from.heading_deg, this.facts.platform_side_m, this.facts.platform_side_m)]],
    });
    branch.parts.push(id);
    branch.length_m += pitch;
    const ways = (["ahead", "left", "right"] as const).flatMap((name) => {
      const visit = part[name];
      return visit === null ? [] : [{ visit, joint: exits[name], from: id, walk_m: exits[name].walk_m }];
    });
    waiting.push(...ways.slice(1));
    return ways[0]!;
  }

  private joint(node: number, branch: string, along: number, walk: number): PlacedJoint {
    const { l, table } = this.space;
    const direction = node & 3;
    const point = node >> 2;
    const i = point % l.nx;
    const [x, y] = placeOf(l, i, (point - i) / l.nx);
    const orientation = (direction & 1) as 0 | 1;
    const joint: PlacedJoint = {
      id: `J${this.placed.joints.length + 1}`,
      x,
      y,
      point,
      orientation,
      heading_deg: headingOf(l, direction),
      branch,
      along_m: along,
      walk_m: walk,
      ground_m: table.groundAt(point),
      kinds: table.standing(point, orientation),
    };
    this.placed.joints.push(joint);
    return joint;
  }
}

/** A, B, ... Z, AA, AB ... */
export const branchLetter = (n: number): string =>
  n < 26
    ? String.fromCharCode(65 + n)
    : branchLetter(Math.floor(n / 26) - 1) + String.fromCharCode(65 + (n % 26));
