import { tables } from "@causey/data/tables";
import {
  codeCalculations,
  freshHole,
  usFasteners,
  type FastenerCapacity,
  type FastenerJoint,
  type Found,
} from "../../src/codes/index.ts";
import type { JsonObject } from "../../src/formula/index.ts";
import type { Fastener } from "../../src/materials/index.ts";
import { N_PER_LBF } from "../../src/units/index.ts";

/** A row of the fastener table. */
export function fastenerRow(id: string): Fastener {
  const row = tables.fasteners.find((f) => f.id === id);
  if (!row) throw new Error(`no fastener ${id}`);
  return row;
}

/** A dry joint of one nail or screw through one timber into another, both of one wood; lengths in inches. */
export function jointOf(
  fastener: Fastener,
  wood: { readonly gravity: number; readonly density_k?: number },
  side_in: number,
  main_in: number,
): FastenerJoint {
  const piece = { material: "wood", angle_deg: 0, ...wood } as const;
  return {
    fastener,
    count: 1,
    per_row: 1,
    side: { ...piece, thickness_m: side_in * 0.0254 },
    main: { ...piece, thickness_m: main_in * 0.0254 },
    shear: "single",
    grain: "side",
    toe_nail: false,
    moisture: "dry",
    duration: "ten-years",
    short_reach: "equations",
    predrilled: false,
    rope: false,
    hole: freshHole,
  };
}

/** Runs a registered calculation of the codes with the project's tables; throws its problems. */
export function runCode(id: string, input: JsonObject): JsonObject {
  const outcome = codeCalculations.find((c) => c.id === id)!.run(input, { tables });
  if (!outcome.ok) throw new Error(outcome.problems.map((p) => `${p.place}: ${p.message}`).join("; "));
  return outcome.outputs;
}

const poundsOf = (found: Found<FastenerCapacity>): number => {
  if (!found.ok) throw new Error(found.problems.map((p) => p.message).join("; "));
  return found.value.value / N_PER_LBF;
};
/** What the joint may carry across and along by the American rules [lb]. */
export const poundsAcross = (joint: FastenerJoint): number => poundsOf(usFasteners.lateral(joint));
export const poundsAlong = (joint: FastenerJoint): number => poundsOf(usFasteners.withdrawal(joint));

/** The same joint through a steel plate. */
export const throughPlate = (joint: FastenerJoint, plate_in: number): FastenerJoint => ({
  ...joint,
  side: { material: "steel", thickness_m: plate_in * 0.0254 },
});
