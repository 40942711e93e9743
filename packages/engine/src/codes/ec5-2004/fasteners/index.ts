import type { AnyFormula } from "../../../formula/index.ts";
import type { FastenerRules } from "../../fastener-contract.ts";
import { ec5Combined, othersBothWays, smoothBothWays } from "./combined.ts";
import { dowelFormulas } from "./dowel.ts";
import { factorFormulas } from "./factors.ts";
import { ec5Guidance } from "./guidance.ts";
import { ec5Lateral, lateralFormulas } from "./lateral.ts";
import { reachFormulas } from "./reach.ts";
import { clause } from "./sources.ts";
import { steelModeFormulas } from "./steel-modes.ts";
import { withdrawalFormulas } from "./withdrawal-values.ts";
import { ec5Withdrawal } from "./withdrawal.ts";
import { woodModeFormulas } from "./wood-modes.ts";

/** Nails and screws by Eurocode 5, design values. */
export const ec5Fasteners: FastenerRules = {
  id: "ec5-2004",
  title: "Eurocode 5 (EN 1995-1-1:2004 with A1:2008)",
  compare_with: "the load times its partial factors (1.35 dead, 1.5 live)",
  sources: [clause("8.2, 8.3 and 8.7"), clause("Table 3.1", "seen")],
  lateral: ec5Lateral,
  withdrawal: ec5Withdrawal,
  combined: ec5Combined,
  guidance: ec5Guidance,
};

export const ec5FastenerFormulas: readonly AnyFormula[] = [
  ...factorFormulas,
  ...dowelFormulas,
  ...woodModeFormulas,
  ...steelModeFormulas,
  ...reachFormulas,
  ...withdrawalFormulas,
  ...lateralFormulas,
  smoothBothWays,
  othersBothWays,
];
