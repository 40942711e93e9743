import { qty, type Qty } from "../units/index.ts";
import type { Found } from "./contract.ts";
import type { CombinedUse, FastenerCapacity, FastenerLoads } from "./fastener-contract.ts";

/** Demands Z across and W along, capacities Z_r and W_r [N]. */
export interface BothWays {
  readonly Z: Qty<"N">;
  readonly Z_r: Qty<"N">;
  readonly W: Qty<"N">;
  readonly W_r: Qty<"N">;
}

/**
 * Joins both capacities and the code's rule for a load both ways. A direction that is loaded and has no capacity gives no
 * use but its reason; one that is not loaded asks for none.
 */
export function combine(
  across: Found<FastenerCapacity>,
  along: Found<FastenerCapacity>,
  { lateral: Z, withdrawal: W }: FastenerLoads,
  rule: (both: BothWays) => Qty<"1">,
): Found<CombinedUse> {
  if (!across.ok || !along.ok) {
    const problems = [...(across.ok ? [] : across.problems), ...(along.ok ? [] : along.problems)];
    const seen = new Set<string>();
    const once = problems.filter((p) => !seen.has(p.place) && seen.add(p.place) !== undefined);
    return { ok: false, problems: once };
  }
  const [lateral, withdrawal] = [across.value, along.value];
  const answer = (use: Qty<"1"> | null, governs: string, reason: string | null): Found<CombinedUse> => ({
    ok: true,
    value: { use, governs, reason, lateral, withdrawal },
  });
  if (Z > 0 && lateral.value === 0) return answer(null, "across the fasteners", lateral.reason);
  if (W > 0 && withdrawal.value === 0) return answer(null, "along the fasteners", withdrawal.reason);
  if (Z === 0 && W === 0) return answer(qty(0, "1"), "no load", null);
  if (W === 0) return answer(qty(Z / lateral.value, "1"), "across the fasteners", null);
  if (Z === 0) return answer(qty(W / withdrawal.value, "1"), "along the fasteners", null);
  return answer(rule({ Z, Z_r: lateral.value, W, W_r: withdrawal.value }), "both ways together", null);
}
