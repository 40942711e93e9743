import type { CheckResult } from "./types.ts";
import type { MetJoint } from "./plan-joints.ts";
import { notApplicable } from "./result.ts";
import type { Setting } from "./setting.ts";
import { baseFor, isAlong, onCarriers } from "./support-base.ts";
import { beamMoments, type BeamPattern } from "./support-beam.ts";
import { checkPressed } from "./support-contact.ts";
import { checkPost, checkSupportBeam, type PatternEffect } from "./support-member.ts";
import { carriersOf, layOf, type LoadPath } from "./support-path.ts";

/** The sill pressed by its rails, posts or packing from below, and the rails as beams on their legs. */
export function carrierChecks(
  setting: Setting,
  met: MetJoint,
  path: LoadPath,
  patterns: readonly BeamPattern[],
): CheckResult[] {
  const { context, lumber } = setting;
  const { piece, on } = path.sill;
  const carriers = carriersOf(on, "y", piece);
  if (carriers.length === 0) return [];
  const forces = onCarriers(carriers, patterns);
  const base = baseFor(setting, met);
  const first = on[0]!;
  const shortest = carriers.reduce((a, b) => (b[1] - b[0] < a[1] - a[0] ? b : a));
  const gaps = carriers.slice(1).map((c, i) => c[0] - carriers[i]![1]);
  const pressed = checkPressed(
    {
      name: `sill on its ${first.role}`,
      size: piece.size!,
      lay: met.support.sill.lay,
      lumber,
      length_m: shortest[1] - shortest[0],
      breadth_m: Math.min(piece.x1, first.x1) - Math.max(piece.x0, first.x0),
      to_end_m: Math.max(0, piece.y1 - carriers.at(-1)![1]),
      to_next_m: Math.max(0, ...gaps.map((g) => (Number.isFinite(g) ? g : 0))),
      is_continuous: false,
    },
    forces,
    base("post-bearing", `Sill pressed on its ${first.role}`, context.code.rule("bearing")),
    context,
  );
  return [pressed, ...railChecks(setting, met, path, forces)];
}

/** A rail or bearer with legs or piles under it: the sill in its middle. */
function railChecks(
  setting: Setting,
  met: MetJoint,
  { carriers }: LoadPath,
  forces: readonly PatternEffect[],
): CheckResult[] {
  const { context, lumber } = setting;
  const rail = carriers.find(({ piece, on }) => piece.size !== null && isAlong(piece) && on.length > 0);
  if (!rail) return [];
  const base = baseFor(setting, met);
  const below = carriersOf(rail.on, "x", rail.piece);
  const patterns = forces.map(({ pattern, effect }): BeamPattern => ({
    name: `${pattern.name}; ${effect.where}`,
    explain: pattern.explain,
    loads: [{ at_m: 0, dead_n: effect.dead, live_n: effect.live }],
  }));
  const { role, size } = rail.piece;
  const beam = {
    name: role,
    size: size!,
    lay: layOf(rail.piece, context.tables.sizes),
    lumber,
    carriers: below,
  };
  const isBent = patterns.some((p) => beamMoments(below, p.loads).some((e) => e.dead + e.live > 1e-6));
  return (["bending", "shear"] as const).map((part) => {
    const own = base(
      `rail-${part}`,
      `${role.charAt(0).toUpperCase()}${role.slice(1)} in ${part}`,
      context.code.rule(part),
    );
    if (!isBent) return notApplicable(own, "it is carried straight under the sill: nothing bends");
    return checkSupportBeam(part, beam, patterns, own, context);
  });
}

/** Posts and legs as columns, what they stand on, and the screws beside them. */
export function postChecks(
  setting: Setting,
  met: MetJoint,
  { sill, uprights }: LoadPath,
  patterns: readonly BeamPattern[],
): CheckResult[] {
  const first = uprights[0];
  if (!first) return [];
  const { context, lumber } = setting;
  const base = baseFor(setting, met);
  const carriers = carriersOf(sill.on, "y", sill.piece);
  const forces = onCarriers(carriers, patterns);
  const { piece, on } = first;
  const sharing = Math.max(1, Math.round(uprights.length / carriers.length));
  const name = piece.role;
  const post = { name, size: piece.size!, lumber, free_m: piece.z1 - Math.max(0, piece.z0), sharing };
  const column = checkPost(
    post,
    forces,
    base("post", `${name === "leg" ? "Legs" : "Posts"} as columns`, context.code.rule("column")),
    context,
  );
  const screws = notApplicable(
    base("screws", `Screws of the ${name}s`, context.code.rule("screws")),
    `each ${name} stands on end between what lies below and above it: the load does not go through its screws`,
  );
  const foot = on.find((p) => p.size !== null);
  if (!foot) return [column, screws];
  const shared = forces.map(({ pattern, effect }) => ({
    pattern,
    effect: { ...effect, dead: effect.dead / sharing, live: effect.live / sharing },
  }));
  const along = isAlong(foot);
  const [length, breadth] = along
    ? [piece.x1 - piece.x0, Math.min(piece.y1, foot.y1) - Math.max(piece.y0, foot.y0)]
    : [piece.y1 - piece.y0, Math.min(piece.x1, foot.x1) - Math.max(piece.x0, foot.x0)];
  const pressed = checkPressed(
    {
      name: `${foot.role} under a ${name}`,
      size: foot.size!,
      lay: layOf(foot, context.tables.sizes),
      lumber,
      length_m: length,
      breadth_m: breadth,
      to_end_m: Math.max(0, along ? Math.min(piece.x0 - foot.x0, foot.x1 - piece.x1) : 0),
      to_next_m: 0,
      is_continuous: true,
    },
    shared,
    base(
      "foot-bearing",
      `${foot.role.charAt(0).toUpperCase()}${foot.role.slice(1)} pressed by a ${name}`,
      context.code.rule("bearing"),
    ),
    context,
  );
  return [column, pressed, screws];
}
