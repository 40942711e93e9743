import type { Job } from "../formula/index.ts";
import { rectangle, type Polygons } from "../site/index.ts";
import { placeNetwork } from "./assemble.ts";
import { keepOffAreas } from "./fields.ts";
import { JointSpace } from "./joint-space.ts";
import { NetworkSearch, type Goal, type JointVisit, type Network, type NextPart } from "./network.ts";
import type { SearchInput } from "./search-input.ts";

type PlatformPart = Extract<NextPart, { kind: "platform" }>;
type ExitName = "ahead" | "left" | "right";
const TURN: Readonly<Record<ExitName, number>> = { ahead: 0, left: 3, right: 1 };

/** Joins further plots one after another, each by the cheapest way from a free exit of a platform that stands. Heuristic. */
export function* extendNetwork(
  input: SearchInput,
  space: JointSpace,
  network: Network,
  goals: readonly Goal[],
  note: string,
): Job<Network> {
  let now = network;
  for (const goal of goals) {
    const exits = freeExits(space, now.root);
    if (exits.size === 0) continue;
    const placed = placeNetwork(now, space, input.facts, "");
    const taken = placed.parts.map((p) =>
      inset(p, input.facts.lengths_m, input.facts.width_m, input.facts.platform_side_m, space.l.step),
    );
    const blocked = [...keepOffAreas(input.site.plots), ...taken];
    const search = new NetworkSearch(space.blocking(blocked), [goal], note);
    const found = yield* search.reachFrom(new Set(exits.keys()));
    if (found === null) continue;
    const exit = exits.get(found.root.node)!;
    exit.platform[exit.name] = found.root;
    now = { cost: now.cost + found.cost, root: now.root, joined: [...now.joined, goal.plot] };
  }
  return now;
}

/** Joints of platform edges from which nothing leads on yet. */
function freeExits(
  space: JointSpace,
  root: JointVisit,
): Map<number, { platform: PlatformPart; name: ExitName }> {
  const free = new Map<number, { platform: PlatformPart; name: ExitName }>();
  const waiting: JointVisit[] = [root];
  for (let visit = waiting.pop(); visit; visit = waiting.pop()) {
    const next = visit.next;
    if (next === null) continue;
    if (next.kind === "module") {
      waiting.push(next.to);
      continue;
    }
    for (const name of ["ahead", "left", "right"] as const) {
      const on = next[name];
      if (on !== null) waiting.push(on);
      else free.set(space.exitOf(next.ci, next.cj, (next.entry + TURN[name]) & 3), { platform: next, name });
    }
  }
  return free;
}

/** An outline drawn in by one step, so that a way may begin at its edge; overlaps are held exactly afterwards. */
function inset(
  part: ReturnType<typeof placeNetwork>["parts"][number],
  lengths: readonly number[],
  width: number,
  side: number,
  step: number,
): Polygons {
  const ring = part.outline[0]![0]!;
  const x = (ring[0]![0] + ring[2]![0]) / 2;
  const y = (ring[0]![1] + ring[2]![1]) / 2;
  const along = part.kind === "module" ? lengths[part.length]! : side;
  const across = part.kind === "module" ? width : side;
  return [
    [rectangle(x, y, part.heading_deg, Math.max(0.01, along - 2 * step), Math.max(0.01, across - 2 * step))],
  ];
}
