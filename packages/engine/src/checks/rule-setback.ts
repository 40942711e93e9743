import type { Trace } from "../formula/index.ts";
import type { Joint } from "../layout/index.ts";
import { bankReach, bankSetback, type ResolvedRule } from "../rules/index.ts";
import { groundAt, rowCrossings, signedDistance, type Zone } from "../site/index.ts";
import { metres, qty, showQuantity } from "../units/index.ts";
import { shareResults, type Finding } from "./rule-results.ts";
import { fine, recordRule, ruleBase, ruleOn, type RuleSetting } from "./rule-setting.ts";
import type { CheckResult } from "./types.ts";

const CAUTION =
  "Common practice, no source: banks of mud slump, crack and are undercut. Look at the bank at low water, and again after every storm.";

/** Supports keep off a channel's edge as far as its bank asks for. Pools have no banks and are left out. */
export function setbackChecks(s: RuleSetting): CheckResult[] {
  const rule = ruleOn(s, "bank-setback");
  const { layout, site } = s.setting.input;
  if (!rule || layout.joints.length === 0) return [];
  const channels = site.zones.filter((z) => z.use === "channel");
  const base = ruleBase(s, rule, "setback", "bank", "Distance of supports from a channel's edge", CAUTION);
  const all = layout.joints.map((j) => j.id);
  if (channels.length === 0)
    return shareResults(base, [{ kind: "not-applicable", parts: all, because: "the site has no channel" }]);
  const findings = layout.joints.flatMap((joint) =>
    channels.flatMap((channel) => setbackFinding(s, rule, joint, channel) ?? []),
  );
  if (findings.length === 0) {
    const reach = showQuantity(bankReach({}), "m", s.setting.context.units);
    return shareResults(base, [
      { kind: "not-applicable", parts: all, because: `no support within ${reach} of a channel` },
    ]);
  }
  return shareResults(base, findings);
}

/** Corners and middles of edges of every foot; the joint itself when its feet are not drawn. */
function footPoints(joint: Joint): (readonly [number, number])[] {
  const points = joint.feet.flatMap((rings) =>
    (rings[0] ?? []).flatMap((p, i, ring) => {
      const q = ring[(i + 1) % ring.length]!;
      return [p, [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2] as const];
    }),
  );
  return points.length > 0 ? points : [[joint.x, joint.y]];
}

function setbackFinding(s: RuleSetting, rule: ResolvedRule, joint: Joint, channel: Zone): Finding | null {
  const { units } = s.setting.context;
  const near = signedDistance(channel.polygons, joint.x, joint.y);
  const reach = bankReach({});
  if (near > reach + 2) return null;
  const distance = Math.min(...footPoints(joint).map(([x, y]) => signedDistance(channel.polygons, x, y)));
  if (distance > reach) return null;
  const bed = lowestBed(s, joint, channel);
  const parts = [joint.id];
  if (bed === null)
    return { kind: "unknown", parts, missing: [`ground heights of the bed of "${channel.name}"`] };
  const working: Trace = [];
  recordRule(s, rule, working);
  const heights = { z_s: metres(joint.ground_m), z_b: metres(bed) };
  const need = fine(bankSetback({ k: qty(rule.value, "1"), ...heights }, working, channel.name));
  const say = (m: number): string => showQuantity(m, "m", units);
  const bank = Math.max(0, joint.ground_m - bed);
  const have = fine(Math.max(0, distance));
  return {
    kind: "judged",
    parts,
    verdict: {
      unit: "m",
      demand: qty(need, "m"),
      capacity: qty(have, "m"),
      governs: `${joint.id} at "${channel.name}"`,
      working,
    },
    carries: `Stands ${say(have)} from the edge of a bank ${say(bank)} high.`,
    change: `Would pass ${say(need - have)} farther back: cross with a longer module, or elsewhere.`,
  };
}

const SPACING = 0.5;

/** Lowest ground of the channel within reach of the joint [m]; null when some of it there is not known. */
function lowestBed(s: RuleSetting, joint: Joint, channel: Zone): number | null {
  const { terrain } = s.setting.input.site;
  const reach = bankReach({});
  const step = Math.max(0.25, Math.min(SPACING, terrain.dx, terrain.dy));
  const pieces = Math.ceil(reach / step);
  let lowest: number | null = null;
  for (let j = -pieces; j <= pieces; j++) {
    const y = joint.y + j * step;
    const crossings = rowCrossings(channel.polygons, y);
    let passed = 0;
    for (let i = -pieces; i <= pieces && passed < crossings.length; i++) {
      const x = joint.x + i * step;
      while (passed < crossings.length && crossings[passed]! <= x) passed++;
      if (passed % 2 === 0 || Math.hypot(x - joint.x, y - joint.y) > reach) continue;
      const z = groundAt(terrain, x, y);
      if (Number.isNaN(z)) return null;
      if (lowest === null || z < lowest) lowest = z;
    }
  }
  return lowest;
}
