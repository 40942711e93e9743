import type { FastenerRules } from "../../fastener-contract.ts";
import { nds } from "../sources.ts";
import { usCombined } from "./combined.ts";
import { usGuidance } from "./guidance.ts";
import { usLateral } from "./lateral.ts";
import { usWithdrawal } from "./withdrawal.ts";

/** Nails, wood screws and lag screws by US allowable stress design, NDS 2018. */
export const usFasteners: FastenerRules = {
  id: "us-asd-2018",
  title: "US allowable stress design (NDS 2018)",
  compare_with: "the load as it comes, without a load factor",
  sources: [
    nds("12.3, yield limit equations", "seen"),
    nds("12.2, withdrawal", "seen"),
    nds("Table 11.3.3, wet service", "memory"),
  ],
  lateral: usLateral,
  withdrawal: usWithdrawal,
  combined: usCombined,
  guidance: usGuidance,
};
