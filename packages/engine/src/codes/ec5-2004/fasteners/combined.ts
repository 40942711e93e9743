import { defineFormula, type Trace } from "../../../formula/index.ts";
import type { Found } from "../../contract.ts";
import type { CombinedUse, FastenerJoint, FastenerLoads } from "../../fastener-contract.ts";
import { combine } from "../../fastener-combine.ts";
import { ec5Lateral } from "./lateral.ts";
import { isSmooth } from "./reach.ts";
import { clause } from "./sources.ts";
import { ec5Withdrawal } from "./withdrawal.ts";

const inputs = { Z: "N", Z_r: "N", W: "N", W_r: "N" } as const;

/** Share used by smooth nails loaded both ways. Demands Z, W and capacities Z_r, W_r [N]; u [1]. */
export const smoothBothWays = defineFormula(
  {
    id: "ec5-2004.fastener.combined-smooth",
    title: "Share used by smooth nails loaded across and along",
    symbol: "u",
    unit: "1",
    text: "W / W_r + Z / Z_r",
    inputs,
    validity: "Capacities above 0.",
    source: clause("equation 8.27"),
  },
  ({ Z, Z_r, W, W_r }) => W / W_r + Z / Z_r,
);

export const othersBothWays = defineFormula(
  {
    id: "ec5-2004.fastener.combined-others",
    title: "Share used by ring-shank nails and screws loaded across and along",
    symbol: "u",
    unit: "1",
    text: "(W / W_r)^2 + (Z / Z_r)^2",
    inputs,
    validity: "Capacities above 0.",
    source: clause("equation 8.28"),
  },
  ({ Z, Z_r, W, W_r }) => (W / W_r) ** 2 + (Z / Z_r) ** 2,
);

/** Load across and along the same fasteners against both capacities (EN 1995-1-1, 8.3.3). */
export const ec5Combined = (joint: FastenerJoint, loads: FastenerLoads, trace?: Trace): Found<CombinedUse> =>
  combine(ec5Lateral(joint, trace), ec5Withdrawal(joint, trace), loads, (both) =>
    isSmooth(joint) ? smoothBothWays(both, trace) : othersBothWays(both, trace),
  );
