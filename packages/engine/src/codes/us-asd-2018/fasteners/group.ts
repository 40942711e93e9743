import { defineFormula, type Trace } from "../../../formula/index.ts";
import { newtons, qty, type Qty } from "../../../units/index.ts";
import type { FastenerJoint } from "../../fastener-contract.ts";
import { noFactor } from "../service-factors.ts";
import { nds } from "../sources.ts";
import { isThick } from "./bearing.ts";

const source = nds("equation 11.3-1", "memory");
const validity = "Rows of fasteners of 1/4 in and more; E A of both pieces along the load.";

const slip = (material: string, k: number) =>
  defineFormula(
    {
      id: `us-asd-2018.fastener.slip-${material}`,
      title: `Load over slip of one fastener, wood on ${material}`,
      symbol: "k_s",
      unit: "N/m",
      text: `${k} * 175.12683524647636 * (D / 0.0254)^1.5`,
      inputs: { D: "m" },
      validity,
      source,
    },
    ({ D }) => k * 175.12683524647636 * (D / 0.0254) ** 1.5,
  );
export const slipModulus = { wood: slip("wood", 180_000), steel: slip("steel", 270_000) } as const;

/** Help value of the group factor. k_s [N/m], s spacing [m], A_m and A_s the two E A [N]; m [1] in (0, 1). */
export const groupTerm = defineFormula(
  {
    id: "us-asd-2018.fastener.group-term",
    title: "Help value of the group factor",
    symbol: "m",
    unit: "1",
    text: "1 / (1 + k_s * s / 2 * (1 / A_m + 1 / A_s) + sqrt((1 + k_s * s / 2 * (1 / A_m + 1 / A_s))^2 - 1))",
    inputs: { k_s: "N/m", s: "m", A_m: "N", A_s: "N" },
    validity,
    source,
  },
  ({ k_s, s, A_m, A_s }) => {
    const u = 1 + ((k_s * s) / 2) * (1 / A_m + 1 / A_s);
    return 1 / (u + Math.sqrt(u ** 2 - 1));
  },
);

/** Group action factor of one row. m [1], n in the row [1], R the smaller E A over the larger [1]; Cg [1]. */
export const groupFactor = defineFormula(
  {
    id: "us-asd-2018.fastener.group",
    title: "Group action factor of one row",
    symbol: "Cg",
    unit: "1",
    text: "m * (1 - m^(2 * n)) / (n * ((1 + R * m^n) * (1 + m) - 1 + m^(2 * n))) * (1 + R) / (1 - m)",
    inputs: { m: "1", n: "1", R: "1" },
    validity,
    source,
  },
  ({ m, n, R }) =>
    (((m * (1 - m ** (2 * n))) / (n * ((1 + R * m ** n) * (1 + m) - 1 + m ** (2 * n)))) * (1 + R)) / (1 - m),
);

/** Group action of the joint's rows; 1 for thin fasteners and for rows of one. */
export function groupOf(joint: FastenerJoint, D: Qty<"m">, trace?: Trace): Qty<"1"> {
  if (!isThick(D) || joint.per_row <= 1) return noFactor({});
  const A_m = newtons(joint.main.stiffness_n ?? NaN);
  const A_s = newtons((joint.side.stiffness_n ?? NaN) * (joint.shear === "double" ? 2 : 1));
  const k_s = slipModulus[joint.side.material]({ D }, trace);
  const m = groupTerm({ k_s, s: qty(joint.row_spacing_m ?? NaN, "m"), A_m, A_s }, trace);
  const R = qty(Math.min(A_m / A_s, A_s / A_m), "1");
  return groupFactor({ m, n: qty(joint.per_row, "1"), R }, trace);
}
