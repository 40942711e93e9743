import { defineFormula, type Trace } from "../../../formula/index.ts";
import { N_PER_LBF, PA_PER_PSI, qty, type Qty } from "../../../units/index.ts";
import type { FastenerJoint } from "../../fastener-contract.ts";
import { nds } from "../sources.ts";

const rate = (name: string, title: string, k: number, power: number, at: string, status: "seen" | "memory") =>
  defineFormula(
    {
      id: `us-asd-2018.fastener.withdrawal-${name}`,
      title: `Withdrawal per length: ${title}`,
      symbol: "W",
      unit: "N/m",
      text: `${k} * ${PA_PER_PSI} * G^${power} * D`,
      inputs: { G: "1", D: "m" },
      validity: "Driven into side grain; D the shank of nails, the nominal diameter of screws.",
      source: nds(at, status),
    },
    ({ G, D }) => k * PA_PER_PSI * G ** power * D,
  );

export const withdrawalRates = {
  smooth_nail: rate("smooth-nail", "smooth nail, bright or galvanised", 1380, 2.5, "equation 12.2-3", "seen"),
  ring_nail: rate(
    "ring-nail",
    "ring-shank nail, per length of rings",
    1800,
    2,
    "12.2.3, roof-sheathing ring-shank nails",
    "memory",
  ),
  stainless_nail: rate(
    "stainless-nail",
    "smooth stainless nail",
    465,
    1.5,
    "12.2.3, smooth stainless nails",
    "memory",
  ),
  wood_screw: rate("wood-screw", "wood screw, per length of thread", 2850, 2, "equation 12.2-2", "seen"),
} as const;

/** Lag screws, per length of thread without the point. G [1], D [m]; W [N/m]. */
export const lagWithdrawal = defineFormula(
  {
    id: "us-asd-2018.fastener.withdrawal-lag",
    title: "Withdrawal per length: lag screw, per length of thread without its point",
    symbol: "W",
    unit: "N/m",
    text: `1800 * ${N_PER_LBF / 0.0254} * G^1.5 * (D / 0.0254)^0.75`,
    inputs: { G: "1", D: "m" },
    validity: "D the unthreaded shank.",
    source: nds("equation 12.2-1", "seen"),
  },
  ({ G, D }) => 1800 * (N_PER_LBF / 0.0254) * G ** 1.5 * (D / 0.0254) ** 0.75,
);

const headSource = nds("12.2.5, head pull-through", "memory");

/** Head through a thin side piece. D_H head, t side thickness [m], G of the side piece [1]; W_H [N]. */
export const pullThroughThin = defineFormula(
  {
    id: "us-asd-2018.fastener.pull-through",
    title: "Pull-through of one head, side piece up to 2.5 heads thick",
    symbol: "W_H",
    unit: "N",
    text: `690 * ${PA_PER_PSI} * pi * D_H * G^2 * t`,
    inputs: { D_H: "m", G: "1", t: "m" },
    validity: "Round flat head, t <= 2.5 D_H.",
    source: headSource,
  },
  ({ D_H, G, t }) => 690 * PA_PER_PSI * Math.PI * D_H * G ** 2 * t,
);

/** Head through a thick side piece. D_H [m], G [1]; W_H [N]. */
export const pullThroughDeep = defineFormula(
  {
    id: "us-asd-2018.fastener.pull-through-deep",
    title: "Pull-through of one head, side piece over 2.5 heads thick",
    symbol: "W_H",
    unit: "N",
    text: `1725 * ${PA_PER_PSI} * pi * D_H^2 * G^2`,
    inputs: { D_H: "m", G: "1" },
    validity: "Round flat head, t > 2.5 D_H.",
    source: headSource,
  },
  ({ D_H, G }) => 1725 * PA_PER_PSI * Math.PI * D_H ** 2 * G ** 2,
);

/** Withdrawal per length of what holds, by kind, shank and metal of the fastener. */
export function withdrawalRate({ fastener: f, main }: FastenerJoint, D: Qty<"m">, trace?: Trace): Qty<"N/m"> {
  const at = { G: qty(main.gravity ?? NaN, "1"), D };
  if (f.kind === "lag-screw") return lagWithdrawal(at, trace);
  if (f.kind === "wood-screw") return withdrawalRates.wood_screw(at, trace);
  if (f.shank === "ring") return withdrawalRates.ring_nail(at, trace);
  const isStainless = f.coating === "stainless-304" || f.coating === "stainless-316";
  return isStainless ? withdrawalRates.stainless_nail(at, trace) : withdrawalRates.smooth_nail(at, trace);
}
