import {
  buoyantForce,
  floatLevel,
  holdDown,
  selfWeightFactor,
  weightOfPieces,
  wettedShare,
  type FloodPiece,
} from "../flood/index.ts";
import { recordValue, type Trace } from "../formula/index.ts";
import { newtons, qty, showQuantity } from "../units/index.ts";
import type { FloodCase } from "./flood-cases.ts";
import { floodBase, partIds } from "./flood-side.ts";
import type { AfloatShape } from "./flood-shapes.ts";
import type { WetLine, WetPart } from "./flood-loads.ts";
import { MISSING_STRENGTH } from "./ground-strength.ts";
import { cannotCheck, resultOf } from "./result.ts";
import type { Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";
import { holdOf, type Hold } from "./uplift.ts";

export interface FirstFloat {
  readonly part: string;
  readonly z_m: number;
}

interface Found {
  readonly part: WetPart;
  readonly z_m: number;
}

/** The first part that a rising water lifts where nothing holds it, driest timber; null when none ever floats. */
function firstOf(setting: Setting, line: WetLine): Found | null {
  const rho_w = qty(setting.input.plan.water_kg_m3, "kg/m3");
  const over = new Map<AfloatShape, number | null>();
  let first: Found | null = null;
  for (const part of line.parts) {
    if (!over.has(part.shape)) over.set(part.shape, floatLevel(part.shape.pieces, rho_w));
    const rise = over.get(part.shape)!;
    if (rise === null) continue;
    const z_m = part.underside_m + rise;
    if (!first || z_m < first.z_m) first = { part, z_m };
  }
  return first;
}

const lifted = (pieces: readonly FloodPiece[], by: number): FloodPiece[] =>
  pieces.map((p) => ({ ...p, bottom_m: p.bottom_m + by, top_m: p.top_m + by }));

/** What floats first and at which level, and whether its share of the stakes keeps it down at the highest level. */
export function floatsFirst(
  setting: Setting,
  line: WetLine,
  cases: readonly FloodCase[],
  holdsOf: (part: WetPart) => readonly Hold[],
): { readonly check: CheckResult; readonly first: FirstFloat | null } | null {
  const highest = cases.reduce((a, b) => (b.z_m > a.z_m ? b : a));
  const found = firstOf(setting, line);
  if (line.parts.length === 0) return null;
  const base = {
    ...floodBase("floats-first", "What floats first", partIds(line)),
    rule: wettedShare.spec.source,
  };
  const some = found ?? { part: line.parts[0]!, z_m: null };
  const { part } = some;
  const first = found && { part: found.part.part.id, z_m: found.z_m };
  const holds = holdsOf(part);
  const reached = found !== null && found.z_m <= highest.z_m;
  if (reached && holds.some((h) => (h.stakes > 0 || h.pile) && h.strength === null))
    return { check: cannotCheck(base, [MISSING_STRENGTH]), first };
  const working: Trace = [];
  const pieces = lifted(part.shape.pieces, part.underside_m);
  const demand = buoyantForce(pieces, highest.z_m, qty(setting.input.plan.water_kg_m3, "kg/m3"), working);
  if (found) recordLevel(found, working);
  const R = newtons(holds.reduce((sum, h) => sum + holdOf(h, setting.context, working), 0));
  const W = weightOfPieces(pieces);
  const k_w = reached ? selfWeightFactor({}, working) : qty(1, "1");
  const capacity = holdDown({ R, k_w, W }, working);
  const { units } = setting.context;
  const at = (z: number): string =>
    `${z.toFixed(2)} m on ${setting.input.site.datum}, ${showQuantity(Math.max(0, z - part.ground_m), "m", units)} over the ground there`;
  const statement = found
    ? `Held by nothing, ${part.part.id} floats first, once the water stands at ${at(found.z_m)}.`
    : "No part floats, however high the water.";
  const then = reached
    ? demand <= capacity
      ? ` Its stakes and weight keep it down at ${highest.name}.`
      : ` At ${highest.name} the water lifts it with ${showQuantity(demand, "N", units)}; stakes and weight hold ${showQuantity(capacity, "N", units)}.`
    : ` The highest level asked about, ${highest.name}, stays under that.`;
  return {
    first,
    check: resultOf(
      base,
      { unit: "N", demand, capacity, governs: `${highest.name}, ${part.part.id}`, working },
      {
        carries: statement + then,
        change:
          demand <= capacity ? null : "Needs stakes: see the anchors, which name how many of which length.",
      },
    ),
  };
}

function recordLevel({ part, z_m }: Found, trace: Trace): void {
  recordValue(trace, {
    id: "flood.floats-first.level",
    title: "Level at which it floats unheld",
    symbol: "z_f",
    value: z_m,
    unit: "m",
    source: {
      id: "archimedes",
      title: "Archimedes' principle",
      at: "force meets weight",
      status: "computed",
    },
    how: "crossing of straight lines between bottoms and tops",
    note: part.part.id,
  });
}
