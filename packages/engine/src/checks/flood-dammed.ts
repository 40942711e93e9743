import {
  dammedShare,
  froudeNumber,
  headLoss,
  isTabled,
  MOST_DAMMED,
  solidUnder,
  wrackCoefficient,
  type Obstacle,
} from "../flood/index.ts";
import type { Trace } from "../formula/index.ts";
import { metres, qty, showQuantity, type Qty } from "../units/index.ts";
import { floodBase, partIds } from "./flood-side.ts";
import { jointDepth, partDepth, zeroOf, type FloodLoads } from "./flood-demand.ts";
import { mostDammedShare } from "./flood-formulas.ts";
import type { WetLine, WetPart } from "./flood-loads.ts";
import { solidSide } from "./flood-shapes.ts";
import { notApplicable, resultOf } from "./result.ts";
import type { Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";

interface Sheet {
  readonly loads: FloodLoads;
  readonly line_m: number;
  readonly section_m2: number;
  readonly supports_m2: number;
  readonly edges_m2: number;
  readonly wrack_m2: number;
  readonly share: number;
}

/** Wrack against a part where nothing solid of the part stands behind it [m2]. */
function matOpen(setting: Setting, part: WetPart, depth: number): number {
  const { wrack } = setting.input.plan.proof.flood;
  const zero = zeroOf(part);
  if (!wrack || depth <= zero) return 0;
  const top = Math.min(depth, zero + Math.max(...part.shape.bodies.map((b) => b.top_m)));
  const bottom = Math.max(0, top - wrack.thickness_m);
  const mat = (top - bottom) * part.length_m;
  return Math.max(0, mat - (solidSide(part.shape, top - zero) - solidSide(part.shape, bottom - zero)));
}

/** The sheet of water that meets the line square, and what of it is dammed; null on dry ground. */
function sheetOf(setting: Setting, line: WetLine, loads: FloodLoads): Sheet | null {
  const wet = line.parts.filter((p) => partDepth(loads.flood, p) > 0);
  if (wet.length === 0) return null;
  const sum = (of: (p: WetPart) => number): number => wet.reduce((s, p) => s + of(p), 0);
  const line_m = sum((p) => p.length_m);
  const section_m2 = sum((p) => p.length_m * meanDepth(loads, p));
  const edges_m2 = sum((p) => solidSide(p.shape, partDepth(loads.flood, p) - zeroOf(p)));
  const wrack_m2 = sum((p) => matOpen(setting, p, partDepth(loads.flood, p)));
  const supports_m2 = line.joints.reduce((s, j) => s + solidSide(j.shape, jointDepth(loads.flood, j)), 0);
  const share = Math.min(1, (edges_m2 + wrack_m2 + supports_m2) / section_m2);
  return { loads, line_m, section_m2, supports_m2, edges_m2, wrack_m2, share };
}

const meanDepth = ({ flood }: FloodLoads, part: WetPart): number =>
  part.joints.reduce((s, j) => s + Math.max(0.001, flood.z_m - j.joint.ground_m), 0) / part.joints.length;

/** Share of the sheet flow that supports, edges and wrack dam along the line, in the worst case, and the head it costs. */
export function dammedCheck(
  setting: Setting,
  line: WetLine,
  all: readonly FloodLoads[],
  speed: Qty<"m/s"> | null,
): { readonly check: CheckResult; readonly share: number | null } {
  const base = {
    ...floodBase("dammed", "Water that the walkway dams", partIds(line)),
    rule: mostDammedShare.spec.source,
    caution:
      "The whole line square to the flow, on level ground: in a channel it dams more. Clear wrack after each flood.",
  };
  const sheets = all.flatMap((loads) => sheetOf(setting, line, loads) ?? []);
  if (sheets.length === 0)
    return { check: notApplicable(base, "no level reaches the ground under it"), share: null };
  const worst = sheets.reduce((a, b) => (b.share > a.share ? b : a));
  const working: Trace = [];
  const d = metres(worst.section_m2 / worst.line_m);
  const as = (name: string, area: number): Obstacle => ({
    name,
    count: 1,
    width_m: area / d,
    bottom_m: 0,
    top_m: d,
  });
  const obstacles = [
    as("supports under water, as a width over the whole depth", worst.supports_m2),
    as("stringers and deck edges under water, as a width over the whole depth", worst.edges_m2),
    as("wrack beyond these, as a width over the whole depth", worst.wrack_m2),
  ].filter((o) => o.width_m > 0);
  const A_s = solidUnder(obstacles, d, working);
  const share = dammedShare({ A_s, l: metres(worst.line_m), d, c: qty(0, "1") }, working);
  const capacity = mostDammedShare({}, working);
  return {
    share,
    check: resultOf(
      base,
      { unit: "1", demand: share, capacity, governs: worst.loads.flood.name, working },
      {
        carries: `Dams ${(100 * share).toFixed(0)} % of the water's section. ${headWords(setting, share, d, speed, working)}`,
        change:
          share <= capacity
            ? null
            : "Needs a deck over the water, supports with less timber across the flow, or gaps in the line: a channel kept open every few modules.",
      },
    ),
  };
}

function headWords(setting: Setting, B: Qty<"1">, d: Qty<"m">, V: Qty<"m/s"> | null, trace: Trace): string {
  if (V === null) return "The rise of the water upstream needs its speed.";
  const Fr = froudeNumber({ V, d }, trace);
  if (!isTabled(Fr) || B > MOST_DAMMED)
    return "The rise of the water upstream lies outside the tables: it is a dam rather than a line.";
  const dh = headLoss({ C_d: wrackCoefficient(Fr, B, trace), B, V }, trace);
  return `The water rises upstream by about ${showQuantity(dh, "m", setting.context.units)}.`;
}
