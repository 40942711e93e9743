import { holdAgainst, metresText } from "./fault.ts";
import { clipped, contains, drawnIn, reachAlong, stretchesInside, touches } from "./shapes.ts";
import { FIT_M, START_M } from "./tolerance.ts";
import type {
  AuditInput,
  AuditPlot,
  AuditZone,
  LaidBranch,
  LaidFoot,
  LaidModule,
  LaidOut,
  Outline,
  RuleReport,
  Spot,
} from "./types.ts";

const jointsOf = (laid: LaidOut): { readonly id: string; readonly branch: string; joints: string[] }[] => [
  ...laid.modules.map((m) => ({ id: m.id, branch: m.branch, joints: [m.from, m.to] })),
  ...laid.platforms.map((p) => ({
    id: p.id,
    branch: p.branch,
    joints: [p.from, p.ahead, p.left, p.right],
  })),
];

/** Joints that can be walked to from those near a start, over parts. */
function walkable(input: AuditInput, laid: LaidOut): ReadonlySet<string> {
  const reached = new Set<string>();
  for (const joint of laid.joints.values())
    if (input.starts.some((s) => Math.hypot(s.x - joint.x, s.y - joint.y) <= START_M)) reached.add(joint.id);
  const parts = jointsOf(laid);
  for (let before = -1; before !== reached.size;) {
    before = reached.size;
    for (const part of parts)
      if (part.joints.some((j) => reached.has(j))) part.joints.forEach((j) => reached.add(j));
  }
  return reached;
}

/** Why a branch does not begin where it says; null when it does. */
function beginningFault(branch: LaidBranch, input: AuditInput, laid: LaidOut): string | null {
  const own = jointsOf(laid).filter((part) => part.branch === branch.id);
  if (own.length === 0) return "has no parts";
  const used = new Set(own.flatMap((part) => part.joints));
  const start = input.starts.find((s) => s.id === branch.from);
  if (start)
    return [...used].some((id) => {
      const joint = laid.joints.get(id);
      return joint !== undefined && Math.hypot(start.x - joint.x, start.y - joint.y) <= START_M;
    })
      ? null
      : `has no joint within ${START_M} m of start "${start.id}"`;
  const platform = laid.platforms.find((p) => p.id === branch.from);
  if (!platform) return `begins at "${branch.from}", which is neither a start nor a platform`;
  const exits = [platform.ahead, platform.left, platform.right];
  return exits.some((id) => used.has(id)) ? null : `leaves platform "${platform.id}" by none of its joints`;
}

/** Every branch begins where it says, and every part and joint can be walked to from a start. */
export const branchesConnected = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("branch", (fault, tested) => {
    const reached = walkable(input, laid);
    for (const branch of laid.branches) {
      tested();
      const why = beginningFault(branch, input, laid);
      if (why) fault(branch.id, branch.from, why, "Begin it at a start or at a joint of a platform.");
    }
    for (const part of jointsOf(laid)) {
      tested();
      if (!part.joints.every((id) => reached.has(id)))
        fault(part.id, part.branch, "cannot be walked to from a start", "Close the break before it.");
    }
    for (const joint of laid.joints.values()) {
      tested();
      if (!reached.has(joint.id))
        fault(joint.id, joint.branch, "no part leads here from a start", "Remove it or join it up.");
    }
  });

/** A claimed plot is reached once, by a joint outside its keep-off line and within its reach beyond it. */
export const plotsReached = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("reached", (fault, tested) => {
    const walked = walkable(input, laid);
    const seen = new Set<string>();
    for (const claim of laid.reached) {
      tested();
      const plot = input.plots.find((p) => p.id === claim.plot);
      const joint = laid.joints.get(claim.joint);
      if (seen.has(claim.plot))
        fault(claim.plot, claim.joint, "claimed twice", "Name its nearest joint once.");
      seen.add(claim.plot);
      if (!plot || !joint || !walked.has(claim.joint)) {
        fault(
          claim.plot,
          claim.joint,
          "plot or joint is not there to walk to",
          "Claim only what the layout has.",
        );
        continue;
      }
      const distance = Math.hypot(plot.x - joint.x, plot.y - joint.y);
      const beyond = distance - plot.keep_off_m;
      if (beyond < -FIT_M || beyond > plot.reach_m + FIT_M)
        fault(
          claim.plot,
          metresText(distance),
          `a joint must be ${metresText(plot.keep_off_m)} to ${metresText(plot.keep_off_m + plot.reach_m)} away`,
          "Lead the branch there, or list the plot as not reached.",
        );
      if (!isOnSide(plot, joint.x - plot.x, joint.y - plot.y))
        fault(
          claim.plot,
          claim.joint,
          `must be reached from the ${plot.arrive_from}`,
          "Lead the branch to that side, or list the plot as not reached.",
        );
      if (Math.abs(distance - claim.distance_m) > FIT_M)
        fault(
          claim.plot,
          metresText(claim.distance_m),
          `the joint is ${metresText(distance)} away`,
          "Write that.",
        );
    }
  });

/** Whether a place seen from a plot lies in the quarter from which it must be reached. */
function isOnSide(plot: AuditPlot, east: number, north: number): boolean {
  const side = { north: 0, east: 90, south: 180, west: 270 }[plot.arrive_from ?? "north"];
  if (plot.arrive_from === undefined) return true;
  const bearing = (Math.atan2(east, north) * 180) / Math.PI;
  const off = Math.abs(((bearing - side + 540) % 360) - 180);
  return off <= 45 + 0.2;
}

const isWater = (zone: AuditZone): boolean => zone.use === "channel" || zone.use === "pool";

/** The strip under a module between two shares of the line from joint to joint. */
function strip(m: LaidModule, a: Spot, b: Spot, from: number, to: number): Outline {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [ux, uy] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
  const [low, high] = reachAlong(m.outline, -uy, ux);
  const off = (p: Spot): number => p[1] * ux - p[0] * uy;
  const corner = (share: number, side: number): Spot => {
    const p: Spot = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
    return [p[0] - uy * (side - off(a)), p[1] + ux * (side - off(a))];
  };
  return [corner(from, low), corner(from, high), corner(to, high), corner(to, low)];
}

/** What a module bridges, a channel or pool that begins and ends within its span, has no support in it. */
export const clearSpans = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("clear-span", (fault, tested) => {
    for (const m of laid.modules) {
      const [from, to] = [laid.joints.get(m.from), laid.joints.get(m.to)];
      if (!from || !to) continue;
      const [a, b]: [Spot, Spot] = [
        [from.x, from.y],
        [to.x, to.y],
      ];
      for (const zone of input.zones.filter(isWater)) {
        if (contains(zone.polygons, a) || contains(zone.polygons, b)) continue;
        for (const [s, t] of stretchesInside(a, b, zone.polygons)) {
          tested();
          const under = laid.feet.filter((f) => standsIn(f, strip(m, a, b, s, t), zone));
          for (const foot of under)
            fault(
              `${m.id}, foot ${foot.index} of ${foot.joint}`,
              zone.id,
              `stands in ${zone.use} "${zone.id}" under the span that bridges it`,
              "Move the support to the bank.",
            );
        }
      }
    }
  });

function standsIn(foot: LaidFoot, span: Outline, zone: AuditZone): boolean {
  const shared = clipped(drawnIn(foot.outline, FIT_M), span);
  return shared.length > 2 && touches(shared, zone.polygons);
}
