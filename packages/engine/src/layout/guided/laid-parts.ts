import { groundAt, rectangle } from "../../site/index.ts";
import type { SearchInput } from "../search-input.ts";
import { feetAt } from "../standing.ts";
import type { Joint, LaidParts, Part, PlatformPart } from "../types.ts";
import { bearing } from "./headings.ts";
import { endsOf, type LaidState } from "./laid-joints.ts";

/** Joints and parts as they lie, in place of those planned; whatever does not lie there is as planned. */
export interface InPlace {
  readonly joints: ReadonlyMap<string, Joint>;
  readonly parts: ReadonlyMap<string, Part>;
}

/** Moves what lies in the field to where it was read: headings run from joint to joint, platforms stay square. */
export function putInPlace(layout: LaidParts, state: LaidState, input: SearchInput): InPlace {
  const joints = new Map(layout.joints.map((j) => [j.id, moved(j, state, input)]));
  const parts = new Map(layout.parts.map((p) => [p.id, p]));
  for (const part of layout.parts) {
    if (!state.kept.has(part.id)) continue;
    const own =
      part.kind === "module"
        ? moduleInPlace(part, joints, input)
        : platformInPlace(part, joints, state, input, layout);
    parts.set(part.id, own);
    const from = joints.get(part.from)!;
    if (layout.joints[0]!.id === from.id) joints.set(from.id, onHeading(from, own.heading_deg, input));
    if (own.kind === "module") joints.set(own.to, onHeading(joints.get(own.to)!, own.heading_deg, input));
  }
  return { joints, parts };
}

function moved(j: Joint, state: LaidState, input: SearchInput): Joint {
  const shift = state.shifts.get(j.id);
  if (!shift) return j;
  const [x, y] = [j.x + shift.dx_m, j.y + shift.dy_m];
  return standAt(j, x, y, j.deck_m + (shift.dz_m ?? 0), input);
}

/** A joint at another place: its support is as high as ground and deck there ask for. Unknown ground counts as planned. */
function standAt(j: Joint, x: number, y: number, deck_m: number, input: SearchInput): Joint {
  const read = groundAt(input.site.terrain, x, y);
  const ground_m = Number.isNaN(read) ? j.ground_m : read;
  const support_height_m = deck_m - ground_m - input.facts.depth_m;
  return onHeading({ ...j, x, y, deck_m, ground_m, support_height_m }, j.heading_deg, input);
}

function onHeading(j: Joint, heading_deg: number, { facts }: SearchInput): Joint {
  const kind = facts.supports.find((k) => k.id === j.support);
  return {
    ...j,
    heading_deg,
    feet: kind ? feetAt(kind, j.x, j.y, heading_deg).map((ring) => [ring]) : j.feet,
  };
}

function moduleInPlace(
  part: Extract<Part, { kind: "module" }>,
  joints: ReadonlyMap<string, Joint>,
  { facts }: SearchInput,
): Part {
  const [a, b] = [joints.get(part.from)!, joints.get(part.to)!];
  const heading_deg = bearing([a.x, a.y], [b.x, b.y]);
  const outline = rectangle((a.x + b.x) / 2, (a.y + b.y) / 2, heading_deg, part.length_m, facts.width_m);
  return { ...part, heading_deg, outline: [[outline]] };
}

/** A platform is turned as the line from its first joint to the first of its exits that lies there is. */
function platformInPlace(
  part: PlatformPart,
  joints: Map<string, Joint>,
  state: LaidState,
  input: SearchInput,
  layout: LaidParts,
): Part {
  const planned = new Map(layout.joints.map((j) => [j.id, j]));
  const at = (id: string, of: ReadonlyMap<string, Joint>): readonly [number, number] => [
    of.get(id)!.x,
    of.get(id)!.y,
  ];
  const seen = endsOf(part).find((id) => state.shifts.has(id))!;
  const turned =
    bearing(at(part.from, joints), at(seen, joints)) - bearing(at(part.from, planned), at(seen, planned));
  const heading_deg = (part.heading_deg + turned + 360) % 360;
  const half = (part.side_m + input.facts.gap_m) / 2;
  const from = joints.get(part.from)!;
  const out = (deg: number): readonly [number, number] => [
    half * Math.sin((deg * Math.PI) / 180),
    half * Math.cos((deg * Math.PI) / 180),
  ];
  const [ex, ey] = out(heading_deg);
  const [x, y] = [from.x + ex, from.y + ey];
  const turns = [
    [part.exits.ahead, 0],
    [part.exits.left, -90],
    [part.exits.right, 90],
  ] as const;
  for (const [id, turn] of turns) {
    const exit = joints.get(id)!;
    const heading = (heading_deg + turn + 360) % 360;
    const [ux, uy] = out(heading);
    const own = state.shifts.has(id) ? exit : standAt(exit, x + ux, y + uy, from.deck_m, input);
    joints.set(id, onHeading(own, heading, input));
  }
  return { ...part, x, y, heading_deg, outline: [[rectangle(x, y, heading_deg, part.side_m, part.side_m)]] };
}
