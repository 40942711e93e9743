import { defineFormula, type Trace } from "../../../formula/index.ts";
import type { Found } from "../../contract.ts";
import type { CombinedUse, FastenerJoint, FastenerLoads } from "../../fastener-contract.ts";
import { combine } from "../../fastener-combine.ts";
import { nds } from "../sources.ts";
import { usLateral } from "./lateral.ts";
import { usWithdrawal } from "./withdrawal.ts";

const inputs = { Z: "N", Z_r: "N", W: "N", W_r: "N" } as const;

/** Share used by nails loaded both ways. Z, W demands and Z_r, W_r capacities of the joint [N]; u [1]. */
export const nailsBothWays = defineFormula(
  {
    id: "us-asd-2018.fastener.combined-nails",
    title: "Share used by nails loaded across and along",
    symbol: "u",
    unit: "1",
    text: "Z / Z_r + W / W_r",
    inputs,
    validity: "Capacities above 0.",
    source: nds("equation 12.4-2", "memory"),
  },
  ({ Z, Z_r, W, W_r }) => Z / Z_r + W / W_r,
);

/** Share used by screws whose load runs at an angle: the printed formula with cos and sin of that angle put in. */
export const screwsBothWays = defineFormula(
  {
    id: "us-asd-2018.fastener.combined-screws",
    title: "Share used by screws loaded across and along",
    symbol: "u",
    unit: "1",
    text: "(Z^2 / Z_r + W^2 / W_r) / sqrt(Z^2 + W^2)",
    inputs,
    validity: "Capacities above 0, some load. F over W'p Z' / (W'p cos^2 a + Z' sin^2 a) with tan a = W / Z.",
    source: nds("equation 12.4-1", "memory"),
  },
  ({ Z, Z_r, W, W_r }) => (Z ** 2 / Z_r + W ** 2 / W_r) / Math.sqrt(Z ** 2 + W ** 2),
);

/** Load across and along the same fasteners against both capacities (NDS 2018, 12.4). */
export const usCombined = (joint: FastenerJoint, loads: FastenerLoads, trace?: Trace): Found<CombinedUse> =>
  combine(usLateral(joint, trace), usWithdrawal(joint, trace), loads, (both) =>
    joint.fastener.kind === "nail" ? nailsBothWays(both, trace) : screwsBothWays(both, trace),
  );
