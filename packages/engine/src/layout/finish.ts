import type { Polygons, Site } from "../site/index.ts";
import { placeNetwork, type PlacedNetwork, type PlacedPlatform, type PlacingSpace } from "./assemble.ts";
import type { LayoutFacts, SearchCosts } from "./facts.ts";
import { isWater } from "./fields.ts";
import type { Network } from "./network.ts";
import { overlappingPairs } from "./overlap.ts";
import { deckProfile, type JointHeight, type ProfileRules } from "./profile.ts";
import { PreparedArea } from "./prepared-area.ts";
import { feetAt } from "./standing.ts";
import type { Branch, Joint, LaidParts, Part, PlatformPart } from "./types.ts";

export type Finished =
  | { readonly ok: true; readonly layout: LaidParts }
  /** `point`: the lattice point to do without, and why. */
  | { readonly ok: false; readonly point: number; readonly because: string };

export interface FinishInput {
  readonly network: Network;
  readonly space: PlacingSpace;
  readonly site: Site;
  readonly facts: LayoutFacts;
  readonly costs: SearchCosts;
  readonly rules: ProfileRules;
  readonly startId: string;
}

/** Turns a found network into real parts at real heights, or says which place broke a rule the search cannot see. */
export function finishLayout(input: FinishInput): Finished {
  const placed = placeNetwork(input.network, input.space, input.facts, input.startId);
  const clash = overlappingPairs(placed.parts.map((p) => p.outline))[0];
  if (clash) return { ok: false, point: pointOf(placed, clash[1]), because: "two parts would overlap" };
  const profile = deckProfile(placed, input.site.terrain, input.facts, input.costs, input.rules);
  if (!profile.ok) {
    const joint = placed.joints.find((j) => j.id === profile.joint)!;
    return { ok: false, point: joint.point, because: profile.because };
  }
  const joints = placed.joints.map((j) => standing(j, profile.heights.get(j.id)!, input.facts));
  const feetClash = overlappingPairs(joints.map((j) => j.feet))[0];
  if (feetClash)
    return { ok: false, point: placed.joints[feetClash[1]]!.point, because: "two supports would overlap" };
  return { ok: true, layout: toLayout(placed, joints, input) };
}

/** A joint of a part to do without; never the first, without which nothing could begin. */
function pointOf(placed: PlacedNetwork, part: number): number {
  const p = placed.parts[part]!;
  const ids = p.kind === "module" ? [p.to, p.from] : [p.from, p.exits.ahead];
  const points = ids.map((id) => placed.joints.find((j) => j.id === id)!.point);
  return points.find((point) => point !== placed.joints[0]!.point) ?? points[0]!;
}

/** A joint with the support that the deck's profile gave it. */
export function standing(j: PlacedNetwork["joints"][number], height: JointHeight, facts: LayoutFacts): Joint {
  const kind = facts.supports[height.kind]!;
  return {
    id: j.id,
    x: j.x,
    y: j.y,
    heading_deg: j.heading_deg,
    branch: j.branch,
    along_m: j.along_m,
    ground_m: j.ground_m,
    deck_m: height.deck_m,
    support: kind.id,
    support_height_m: height.height_m,
    feet: feetAt(kind, j.x, j.y, j.heading_deg).map((ring) => [ring]),
  };
}

/** Writes placed parts out, with what they bridge and what they reach. */
export function toLayout(
  placed: PlacedNetwork,
  joints: readonly Joint[],
  input: Pick<FinishInput, "space" | "site" | "facts">,
): LaidParts {
  const { facts, space, site } = input;
  const water = site.zones.filter(isWater).map((z) => ({ id: z.id, area: new PreparedArea(z.polygons) }));
  const bridged = (outline: Polygons): string[] =>
    water.filter((z) => z.area.touches(outline[0]![0]!)).map((z) => z.id);
  const used = new Set([...placed.parts.map((p) => p.from), ...placed.arrivals.map((a) => a.joint)]);
  const parts = placed.parts.map((p): Part =>
    p.kind === "module"
      ? {
          id: p.id,
          kind: p.kind,
          branch: p.branch,
          length_m: facts.lengths_m[p.length]!,
          heading_deg: p.heading_deg,
          from: p.from,
          to: p.to,
          along_m: p.along_m,
          outline: p.outline,
          bridges: bridged(p.outline),
        }
      : {
          id: p.id,
          kind: p.kind,
          use: useOf(p, used),
          branch: p.branch,
          side_m: facts.platform_side_m,
          x: p.x,
          y: p.y,
          heading_deg: p.heading_deg,
          from: p.from,
          exits: p.exits,
          along_m: p.along_m,
          outline: p.outline,
          bridges: bridged(p.outline),
        },
  );
  const place = new Map(joints.map((j) => [j.id, j]));
  return {
    heading_deg: space.l.heading_deg,
    lattice_m: space.l.step,
    joints,
    parts,
    branches: placed.branches.map((b): Branch => ({
      id: b.id,
      from: b.from,
      to_plot: b.to === null ? "" : site.plots[b.to]!.id,
      parts: b.parts,
      length_m: b.length_m,
    })),
    reached: placed.arrivals.map((a) => {
      const plot = site.plots[a.plot]!;
      const joint = place.get(a.joint)!;
      return {
        plot: plot.id,
        joint: a.joint,
        distance_m: Math.hypot(plot.x - joint.x, plot.y - joint.y),
        walk_m: a.walk_m,
      };
    }),
  };
}

/** A platform is there for passing when the way only goes straight on over it. `used`: joints from which a way goes on. */
const useOf = ({ exits }: PlacedPlatform, used: ReadonlySet<string>): PlatformPart["use"] =>
  used.has(exits.ahead) && !used.has(exits.left) && !used.has(exits.right) ? "passing" : "turning";
