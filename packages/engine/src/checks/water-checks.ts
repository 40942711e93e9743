import { shapeCoefficient } from "../flood/index.ts";
import { metres, qty, type Qty } from "../units/index.ts";
import { anchorChecks, type AnchorFigure } from "./anchor-checks.ts";
import { coldChecks } from "./cold-checks.ts";
import { floodCases, type FloodCases } from "./flood-cases.ts";
import { boundsAt, dragCheck, speedMissing } from "./flood-checks.ts";
import { floodBase, partIds, sideMemory } from "./flood-side.ts";
import { waveChecks } from "./flood-waves.ts";
import { dammedCheck } from "./flood-dammed.ts";
import { floodLoads, jointsById, type FloodLoads } from "./flood-demand.ts";
import { floatsFirst, type FirstFloat } from "./flood-floats.ts";
import { closingSpeed, legDepth, legPush, legWidth } from "./flood-formulas.ts";
import { wetLine, type WetLine } from "./flood-loads.ts";
import { logCheck } from "./flood-log.ts";
import { NO_SPEED } from "./flood-words.ts";
import type { MetJoint } from "./plan-joints.ts";
import { removalChecks } from "./removal-checks.ts";
import { cannotCheck, notApplicable } from "./result.ts";
import type { Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";
import { holdAt } from "./uplift-checks.ts";

/** What a page or sheet draws of the floods of a plan. */
export interface FloodFigures {
  readonly cases: readonly {
    readonly id: string;
    readonly name: string;
    readonly z_m: number;
    /** As told twice, or both bounds of the flood rule in the deepest water under the walkway. */
    readonly speeds_m_s: readonly [low: number, high: number];
    readonly source: string;
  }[];
  /** What a rising water lifts first where nothing holds it. */
  readonly first_floats: FirstFloat | null;
  readonly dammed_share: number | null;
  readonly anchors: readonly AnchorFigure[];
  /** When nobody may be on it: the deck wet at its lowest, or water this fast over it. A project decision. */
  readonly closes_at: { readonly z_m: number; readonly speed_m_s: number };
}

export interface WaterProof {
  readonly checks: readonly CheckResult[];
  readonly flood: FloodFigures | null;
}

/** Floods, anchors, cold and taking out: all that water, ice and mud do to a plan's layout. */
export function waterChecks(setting: Setting, joints: readonly MetJoint[]): WaterProof {
  const other = [...coldChecks(setting, joints), ...removalChecks(setting, joints)];
  const found = floodCases(setting);
  const all = setting.input.layout.parts.map((p) => p.id);
  if (found.cases.length === 0 || joints.length === 0)
    return { checks: [...noCase(found, all), ...other], flood: null };
  const line = wetLine(setting, joints);
  const flood = caseChecks(setting, line, found);
  const lost = found.lost.map(({ id, missing }) =>
    cannotCheck(floodBase(`level.${id}`, "A level that cannot be checked", all), [missing]),
  );
  return { checks: [...lost, ...flood.checks, ...other], flood: flood.flood };
}

function noCase(found: FloodCases, parts: readonly string[]): CheckResult[] {
  const flood = floodBase("all", "Water that moves", parts);
  const anchor = { ...flood, id: "anchor.all", kind: "anchor", title: "Anchors" } as const;
  if (found.lost.length === 0)
    return [flood, anchor].map((b) => notApplicable(b, "the plan names no flood level: a dry site"));
  return [flood, anchor].map((b) =>
    cannotCheck(
      b,
      found.lost.map((l) => l.missing),
    ),
  );
}

function caseChecks(setting: Setting, line: WetLine, found: FloodCases): WaterProof {
  const { flood } = setting.input.plan.proof;
  const all = found.cases.map((c) => floodLoads(setting, c));
  const ids = partIds(line);
  if (ids.length === 0) {
    const afloat = setting.input.layout.parts.map((p) => p.id);
    const because =
      "it rises on its floats; what holds them against current and waves is asked for under the ground";
    return { checks: [notApplicable(floodBase("all", "Water that moves", afloat), because)], flood: null };
  }
  const speed = flood.speed_m_s === null ? null : qty(flood.speed_m_s, "m/s");
  const sideOf = sideMemory(setting, jointsById(line));
  const floats = floatsFirst(setting, line, found.cases, (part) =>
    part.joints.flatMap((m) => holdAt(setting, m) ?? []),
  );
  const dammed = dammedCheck(setting, line, all, speed);
  const anchors = anchored(setting, line, all, speed);
  const moving =
    speed === null
      ? [speedMissing(setting, line, all)]
      : [
          ...all.map((loads) => dragCheck(setting, line, loads, speed, sideOf)),
          logCheck(setting, line, found.cases, speed),
        ];
  const waves =
    flood.wave === null
      ? [notApplicable(floodBase("wave", "Waves", ids), "not told; waves are not looked at")]
      : all.flatMap((loads) => waveChecks(setting, line, loads, sideOf));
  return {
    checks: [
      ...moving,
      ...waves,
      ...(flood.wrack === null
        ? [notApplicable(floodBase("wrack", "Wrack on the line", ids), "not told; wrack is not counted")]
        : []),
      ...(floats ? [floats.check] : []),
      dammed.check,
      ...anchors.checks,
    ],
    flood: {
      cases: all.map((loads) => figureOf(setting, line, loads)),
      first_floats: floats?.first ?? null,
      dammed_share: dammed.share,
      anchors: anchors.figures,
      closes_at: closesAt(setting, line),
    },
  };
}

function anchored(
  setting: Setting,
  line: WetLine,
  all: readonly FloodLoads[],
  speed: Qty<"m/s"> | null,
): ReturnType<typeof anchorChecks> {
  if (speed !== null) return anchorChecks(setting, line.shapes, line.joints, all, speed);
  const parts = line.joints.map((j) => j.met.joint.id);
  const base = {
    ...floodBase("anchor", "Anchors pulled up and pushed sideways", parts),
    id: "anchor.all",
    kind: "anchor",
  } as const;
  return { checks: [cannotCheck(base, [NO_SPEED])], figures: [] };
}

function figureOf(setting: Setting, line: WetLine, { flood }: FloodLoads): FloodFigures["cases"][number] {
  const { speed_m_s, speed_source } = setting.input.plan.proof.flood;
  const deepest = flood.z_m - Math.min(...line.joints.map((j) => j.met.joint.ground_m));
  return {
    id: flood.id,
    name: flood.name,
    z_m: flood.z_m,
    speeds_m_s: speed_m_s === null ? boundsAt(deepest) : [speed_m_s, speed_m_s],
    source:
      speed_m_s === null ? "not told: both bounds of the flood rule, in the deepest water" : speed_source,
  };
}

/** The lowest deck less half the told wave, and the speed that shoves a late walker's legs. */
function closesAt(setting: Setting, line: WetLine): FloodFigures["closes_at"] {
  const { plan } = setting.input;
  const lowest = Math.min(...line.joints.map((j) => j.met.joint.deck_m));
  const C_d = shapeCoefficient(setting.context.tables, "post-round") ?? qty(1.2, "1");
  const speed_m_s = closingSpeed({
    F_l: legPush({}),
    rho_w: qty(plan.water_kg_m3, "kg/m3"),
    C_d,
    b_l: legWidth({}),
    h_l: legDepth({}),
  });
  return { z_m: metres(lowest - (plan.proof.flood.wave?.height_m ?? 0) / 2), speed_m_s };
}
