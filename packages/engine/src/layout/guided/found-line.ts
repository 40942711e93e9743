import { rectangle, type Polygons } from "../../site/index.ts";
import type { LayoutFacts } from "../facts.ts";
import { AHEAD, LEFT, RIGHT } from "../joint-space.ts";
import { DX, DY, headingOf, placeOf, type Lattice } from "../lattice.ts";
import type { JointVisit, NextPart } from "../network.ts";
import type { Spot } from "./guide.ts";
import type { FittedPath } from "./guided-search.ts";

export type PlatformVisit = Extract<NextPart, { kind: "platform" }>;
type ExitName = "ahead" | "left" | "right";

/** A fitted line as a chain of joints, ready to be laid out, with its middle line. */
export interface FoundLine {
  readonly path: FittedPath;
  readonly visits: readonly MutableVisit[];
  readonly platforms: readonly PlatformVisit[];
  /** From the first joint over every joint and the middle of every platform. */
  readonly middle: readonly Spot[];
}

export interface MutableVisit extends JointVisit {
  arrives: number[];
}

/** A platform's exit from which nothing leads on. */
export interface FreeExit {
  readonly platform: PlatformVisit;
  readonly name: ExitName;
  readonly direction: number;
}

const TURNS: readonly (readonly [ExitName, number])[] = [
  ["ahead", 0],
  ["left", 3],
  ["right", 1],
];

/** Writes a fitted path out as joints and parts. `half`: of a platform's pitch [steps]. */
export function lineOf(path: FittedPath, l: Lattice, half: number): FoundLine {
  const visits: MutableVisit[] = [{ node: path.first, arrives: [], next: null }];
  const platforms: PlatformVisit[] = [];
  const middle: Spot[] = [spotOf(l, path.first >> 2)];
  for (const { arc, to } of path.steps) {
    const before = visits.at(-1)!;
    const visit: MutableVisit = { node: to, arrives: [], next: null };
    if (arc < AHEAD) before.next = { kind: "module", length: arc - 1, to: visit };
    else {
      const entry = before.node & 3;
      const i = (before.node >> 2) % l.nx;
      const ci = i + DX[entry]! * half;
      const cj = ((before.node >> 2) - i) / l.nx + DY[entry]! * half;
      const platform: PlatformVisit = {
        kind: "platform",
        ci,
        cj,
        entry,
        ahead: arc === AHEAD ? visit : null,
        left: arc === LEFT ? visit : null,
        right: arc === RIGHT ? visit : null,
      };
      before.next = platform;
      platforms.push(platform);
      middle.push(placeOf(l, ci, cj));
    }
    middle.push(spotOf(l, to >> 2));
    visits.push(visit);
  }
  return { path, visits, platforms, middle };
}

export function spotOf(l: Lattice, point: number): Spot {
  const i = point % l.nx;
  return placeOf(l, i, (point - i) / l.nx);
}

export const freeExits = (platform: PlatformVisit): FreeExit[] =>
  TURNS.filter(([name]) => platform[name] === null).map(([name, turn]) => ({
    platform,
    name,
    direction: (platform.entry + turn) & 3,
  }));

/**
 * Outlines of a line's parts drawn in by one step, so that another may begin at the edge of one; overlaps are held
 * exactly afterwards.
 */
export function takenBy(line: FoundLine, l: Lattice, facts: LayoutFacts): Polygons[] {
  return line.visits.flatMap((visit): Polygons[] => {
    const { next } = visit;
    if (next === null) return [];
    const heading = headingOf(l, visit.node & 3);
    const isModule = next.kind === "module";
    const [long, wide] = isModule
      ? [facts.lengths_m[next.length]!, facts.width_m]
      : [facts.platform_side_m, facts.platform_side_m];
    const [a, b] = isModule
      ? [spotOf(l, visit.node >> 2), spotOf(l, next.to.node >> 2)]
      : [placeOf(l, next.ci, next.cj), placeOf(l, next.ci, next.cj)];
    return [drawnIn((a[0] + b[0]) / 2, (a[1] + b[1]) / 2, heading, long, wide, l.step)];
  });
}

/** A rectangle drawn in by so much on every side. */
export function drawnIn(
  x: number,
  y: number,
  heading: number,
  long: number,
  wide: number,
  by: number,
): Polygons {
  const less = (size: number): number => Math.max(0.01, size - 2 * by);
  return [[rectangle(x, y, heading, less(long), less(wide))]];
}
