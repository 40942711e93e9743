import { defineFormula, type Trace } from "../../formula/index.ts";
import type { Creep } from "../contract.ts";
import { kdef, serviceClass } from "./duration.ts";
import { lastingLive } from "./factors.ts";
import { ec5 } from "./sources.ts";

/** Final deflection over that at once, dead load. kdef [1]. */
export const deadCreep = defineFormula(
  {
    id: "ec5-2004.creep.dead",
    title: "Deflection after years over that at once, dead load",
    symbol: "k_G",
    unit: "1",
    text: "1 + kdef",
    inputs: { kdef: "1" },
    validity: "Members and joints of one creep.",
    source: ec5("equation 2.3", "seen"),
  },
  ({ kdef }) => 1 + kdef,
);

/** Final deflection over that at once, live load, of which psi2 lasts. */
export const liveCreep = defineFormula(
  {
    id: "ec5-2004.creep.live",
    title: "Deflection after years over that at once, live load",
    symbol: "k_Q",
    unit: "1",
    text: "1 + psi2 * kdef",
    inputs: { psi2: "1", kdef: "1" },
    validity: "Members and joints of one creep.",
    source: ec5("equation 2.4", "seen"),
  },
  ({ psi2, kdef }) => 1 + psi2 * kdef,
);

export function creep(wet: boolean, trace?: Trace): Creep {
  const k = kdef[serviceClass(wet)]({}, trace);
  return {
    dead: deadCreep({ kdef: k }, trace),
    live: liveCreep({ psi2: lastingLive({}, trace), kdef: k }, trace),
  };
}
