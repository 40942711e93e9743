import {
  chanceOver,
  halfWidths,
  logSpreadAt,
  readingsBelow,
  strengthField,
  usualSettings,
  type Band,
  type BandJoint,
  type LineReading,
  type LogSpread,
  type StrengthField,
  type StrengthSettings,
} from "../ground/index.ts";
import type { SupportKind } from "../kit/index.ts";
import type { Plan } from "../plan/document.ts";
import type { StrengthReading } from "../site/index.ts";
import { studentQuantile } from "../statistics/index.ts";
import { leastReading } from "./soil-rules.ts";

/** What is known of the strength under one kind of support. */
export interface KindGround {
  /** Readings that count: below the root mat where one is told, within the depth that the support feels. */
  readonly readings: readonly LineReading[];
  /** The plan's own value [Pa], used where no reading counts; null = not known. */
  readonly plan_su_pa: number | null;
  readonly settings: StrengthSettings;
}

/** The strength at one joint as a distribution, with its capacity and the chance that the load exceeds it. */
export interface JointBand {
  readonly su_pa: Band;
  readonly capacity_pa: Band;
  readonly chance: number;
  /** ln su: mean, scale of the readings' Student's t, its degrees of freedom, the formula's error. */
  readonly spread: LogSpread;
  /** Standard deviation of ln su in the field, and the share of its variance that the readings leave at the joint. */
  readonly sigma: number;
  readonly shape: number;
  readonly nearest_m: number | null;
}

/** Smaller side of the outline of a support's feet [m]: feet close together press the ground below as one. */
export function outlineOf({ feet }: SupportKind): { readonly along_m: number; readonly across_m: number } {
  const along = Math.max(...feet.map((f) => f.along_mm));
  const right = Math.max(...feet.map((f) => f.offset_across_mm + f.across_mm / 2));
  const left = Math.min(...feet.map((f) => f.offset_across_mm - f.across_mm / 2));
  return { along_m: along / 1000, across_m: (right - left) / 1000 };
}

export const settingsOf = ({ proof }: Plan): StrengthSettings => ({
  ...usualSettings,
  correlation_m: proof.ground.alike_m,
  prior_sd: proof.ground.prior_spread,
});

/**
 * Readings by their place on the plan. Two places are alike by the straight distance between them: measured along bent
 * branches some sets of places could not belong to any ground, and a bend does not part what lies side by side.
 */
const placed = (r: StrengthReading): LineReading => ({
  at_m: r.x,
  off_m: r.y,
  depth_m: r.depth_m,
  su_pa: Math.max(leastReading({}), r.su_kpa * 1000),
});

/** Ground under one kind of support: its readings by depth, and what counts without any. */
export function kindGround(plan: Plan, all: readonly StrengthReading[], kind: SupportKind): KindGround {
  const { along_m, across_m } = outlineOf(kind);
  const foot = { width_m: Math.min(along_m, across_m), depth_m: 0 };
  const below = readingsBelow(all.map(placed), foot, plan.proof.ground.root_mat_m);
  const { su_kpa } = plan.ground;
  const plan_su_pa = su_kpa === null ? null : Math.max(leastReading({}), su_kpa * 1000);
  return { readings: below.ground, plan_su_pa, settings: settingsOf(plan) };
}

/** Joints worked out together: the field also holds how they go together, which grows with their square. */
const AT_ONCE = 64;

/** The strength at every joint on its own; null where nothing is known. */
export function jointBands(
  ground: KindGround,
  joints: readonly (BandJoint & { readonly pressure_pa: number })[],
): readonly JointBand[] | null {
  const { readings, settings, plan_su_pa } = ground;
  const spreads: { readonly spread: LogSpread; readonly sigma: number; readonly shape: number }[] = [];
  for (let from = 0; from < joints.length; from += AT_ONCE) {
    const some = joints.slice(from, from + AT_ONCE);
    const field = strengthField(readings, some, plan_su_pa, settings);
    if (!field) return null;
    some.forEach((_, i) => {
      const shape = field.shape.values[i * field.shape.size + i]!;
      spreads.push({ spread: logSpreadAt(field, i, settings), sigma: field.sigma, shape });
    });
  }
  if (spreads.length === 0) return [];
  const t = studentQuantile(0.95, spreads[0]!.spread.df);
  const halves = halfWidths(
    0.95,
    spreads.map((s) => s.spread),
  );
  return joints.map((joint, i) => {
    const { spread, sigma, shape } = spreads[i]!;
    const of = (half: number, by: number): Band => ({
      low: by * Math.exp(spread.mean - half),
      median: by * Math.exp(spread.mean),
      high: by * Math.exp(spread.mean + half),
    });
    return {
      su_pa: of(spread.scale * t, 1),
      capacity_pa: of(halves[i]!, joint.factor),
      chance: chanceOver(joint.pressure_pa, joint.factor, spread),
      spread,
      sigma,
      shape,
      nearest_m: nearest(joint, readings),
    };
  });
}

const nearest = (joint: BandJoint, readings: readonly LineReading[]): number | null =>
  readings.length === 0
    ? null
    : readings.reduce(
        (d, r) => Math.min(d, Math.hypot(r.at_m - joint.at_m, r.off_m - joint.off_m)),
        Infinity,
      );

/** The field of some joints together, for what asks how they go together. */
export const fieldOf = (ground: KindGround, joints: readonly BandJoint[]): StrengthField | null =>
  strengthField(ground.readings, joints, ground.plan_su_pa, ground.settings);
