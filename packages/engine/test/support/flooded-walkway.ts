import { tables } from "@causey/data/tables";
import { prove, type CheckResult, type Proof } from "../../src/checks/index.ts";
import type { Kit, SupportKind } from "../../src/kit/index.ts";
import { moduleMasses } from "../../src/materials/index.ts";
import type { FloodProof, Plan } from "../../src/plan/index.ts";
import type { WaterLevel } from "../../src/water/index.ts";
import { checkedPlan, checksInput, levelSite, stoutKit, straightLayout } from "./straight-walkway.ts";

export type Anchor = SupportKind["anchor"];

/** Three modules of 8 ft on open crates 300 mm high, on level ground at 1 m of 8 kPa; the flood stands at 2 m. */
export const crateKit = (anchor: Anchor): Kit => ({
  ...stoutKit,
  supports: stoutKit.supports.map((s) => ({ ...s, anchor })),
});

/** All that is proven of that walkway, with its masses from the kit's own pieces. */
export function flooded(
  flood: Partial<FloodProof>,
  anchor: Anchor = null,
  change: Partial<Plan> = {},
  levels: readonly WaterLevel[] = levelSite().levels,
): Proof {
  const kit = change.kit ?? crateKit(anchor);
  const blank = checkedPlan();
  const proof = { ...blank.proof, flood: { ...blank.proof.flood, ...flood } };
  return prove(
    checksInput({
      plan: checkedPlan({ kit, proof, ...change }),
      site: levelSite({ levels }),
      layout: straightLayout([2.4384, 2.4384, 2.4384]),
      masses: moduleMasses(kit, tables.sizes),
    }),
  );
}

export function found({ checks }: Proof, id: string): CheckResult {
  const result = checks.find((c) => c.id === id);
  if (!result) throw new Error(`no result ${id} among ${checks.map((c) => c.id).join(", ")}`);
  return result;
}

/** A result with numbers. */
export function judged(proof: Proof, id: string): Extract<CheckResult, { readonly demand: number }> {
  const result = found(proof, id);
  if (!("demand" in result)) throw new Error(`${id} is ${result.status}`);
  return result;
}
