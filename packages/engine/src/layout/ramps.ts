import { defineFormula, type Trace } from "../formula/index.ts";
import type { Ramp } from "../kit/index.ts";
import { groundAt, rectangle, signedDistance, type Polygons, type Site } from "../site/index.ts";
import { metres } from "../units/index.ts";
import type { LayoutFacts } from "./facts.ts";
import { shutAreas } from "./fields.ts";
import { PreparedArea } from "./prepared-area.ts";
import type { Joint, Layout, RampPart } from "./types.ts";

const geometry = { id: "causey-ramps", title: "Plane geometry, by hand", status: "computed" } as const;

/** Rise over run of a ramp body that lies straight from the ground to the deck. */
export const rampGrade = defineFormula(
  {
    id: "layout.ramp-grade",
    title: "Grade of an entry ramp",
    symbol: "g",
    unit: "1",
    text: "r / sqrt(L^2 - r^2)",
    inputs: { r: "m", L: "m" },
    validity: "r rise from the ground at the ramp's foot to the deck, 0 <= r < L; L length of its body.",
    source: geometry,
  },
  ({ r, L }) => r / Math.sqrt(L ** 2 - r ** 2),
);

/** Least body of a ramp that keeps a grade. */
export const rampLength = defineFormula(
  {
    id: "layout.ramp-length",
    title: "Least length of an entry ramp that keeps its grade on level ground",
    symbol: "L_r",
    unit: "m",
    text: "r * sqrt(1 + 1 / g^2)",
    inputs: { r: "m", g: "1" },
    validity: "r rise from the ground to the deck, >= 0; g largest grade, > 0.",
    source: geometry,
  },
  ({ r, g }) => r * Math.sqrt(1 + 1 / g ** 2),
);

export interface RampInput {
  readonly layout: Layout;
  readonly site: Site;
  readonly facts: LayoutFacts;
  readonly laying: { readonly from: string; readonly to: string };
  /** The kit's ramp; null = the first deck is stepped onto. */
  readonly ramp: Ramp | null;
}

/**
 * How the walkway is entered at every start it leaves from: the shortest of the kit's ramp bodies that keeps its grade,
 * laid before the first joint against the way, or the height of the step.
 *
 * The ramp's upper end meets the first module with the kit's joint gap; its foot lies on the ground. Where no body
 * keeps the grade, the one that comes nearest is laid and `keeps_grade` is false. The ground under the foot is judged by
 * the walkway's own rules: known, in no closed area or its buffer, in no keep-off circle.
 */
export function entryRamps(input: RampInput, trace?: Trace): RampPart[] {
  const { layout, site } = input;
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  return layout.branches.flatMap((branch): RampPart[] => {
    const start = site.starts.find((s) => s.id === branch.from);
    const first = layout.parts.find((p) => p.id === branch.parts[0]);
    const joint = first && joints.get(first.from);
    return start && joint ? [entryAt(input, start.id, joint, trace)] : [];
  });
}

function entryAt(input: RampInput, start: string, joint: Joint, trace?: Trace): RampPart {
  const step_m = joint.deck_m - joint.ground_m;
  const none = {
    length_m: null,
    grade: null,
    keeps_grade: null,
    foot: null,
    outline: [],
    allowed: null,
    because: null,
  };
  const base = { start, joint: joint.id, heading_deg: joint.heading_deg, step_m, ...none };
  if (input.ramp === null) return base;
  const bodies = [...input.ramp.lengths_mm]
    .sort((a, b) => a - b)
    .flatMap((mm) => {
      const body = bodyOf(input, joint, mm / 1000);
      return body === null ? [] : [body];
    });
  const { max_grade } = input.ramp;
  const kept = bodies.find((b) => b.grade <= max_grade + 1e-9);
  const best = kept ?? [...bodies].sort((a, b) => a.grade - b.grade)[0];
  if (!best)
    return {
      ...base,
      keeps_grade: false,
      allowed: false,
      because: "No ramp of the kit reaches ground that is known before the first joint.",
    };
  rampGrade({ r: metres(Math.abs(best.rise_m)), L: metres(best.length_m) }, trace, `ramp at ${start}`);
  const because = refusal(input, best.outline, best.foot);
  return {
    ...base,
    length_m: best.length_m,
    grade: best.grade,
    keeps_grade: kept !== undefined,
    foot: { x: best.foot[0], y: best.foot[1], ground_m: best.ground_m },
    outline: best.outline,
    allowed: because === null,
    because,
  };
}

interface Body {
  readonly length_m: number;
  readonly rise_m: number;
  readonly grade: number;
  readonly foot: readonly [number, number];
  readonly ground_m: number;
  readonly outline: Polygons;
}

/** A ramp body on the ground before a joint; null where the ground is unknown or too far below or above. */
function bodyOf({ site, facts }: RampInput, joint: Joint, length_m: number): Body | null {
  const h = (joint.heading_deg * Math.PI) / 180;
  const before = (d: number): readonly [number, number] => [
    joint.x - d * Math.sin(h),
    joint.y - d * Math.cos(h),
  ];
  const gap = facts.gap_m / 2;
  // The foot's place follows from the rise, and the rise from the ground at the foot: a few rounds settle both.
  let run = length_m;
  let rise = NaN;
  for (let round = 0; round < 20; round++) {
    rise = joint.deck_m - groundAt(site.terrain, ...before(gap + run));
    if (!(Math.abs(rise) < length_m)) return null;
    const next = Math.sqrt(length_m ** 2 - rise ** 2);
    if (Math.abs(next - run) < 1e-6) break;
    run = next;
  }
  const foot = before(gap + run);
  const [x, y] = before(gap + run / 2);
  return {
    length_m,
    rise_m: rise,
    grade: rampGrade({ r: metres(Math.abs(rise)), L: metres(length_m) }),
    foot,
    ground_m: joint.deck_m - rise,
    outline: [[rectangle(x, y, joint.heading_deg, run, facts.width_m)]],
  };
}

/** Why the ground under a ramp is not allowed, in words for the steward; null when it is. */
function refusal(input: RampInput, outline: Polygons, foot: readonly [number, number]): string | null {
  const { site, laying } = input;
  const ring = outline[0]![0]!;
  if ([...ring, foot].some(([x, y]) => Number.isNaN(groundAt(site.terrain, x, y))))
    return "The ground under the ramp is not known.";
  if (shutAreas(site, laying.from, laying.to).some((a) => new PreparedArea(a).touches(ring)))
    return "The ramp lies in a closed area or its buffer.";
  const plot = site.plots.find((p) => signedDistance(outline, p.x, p.y) < p.keep_off_m);
  return plot ? `The ramp lies within the keep-off line of ${plot.name}.` : null;
}
