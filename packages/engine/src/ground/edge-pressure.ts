import { defineFormula, type Trace } from "../formula/index.ts";
import { metres, qty, type Qty } from "../units/index.ts";
import type { Contact } from "./contact.ts";
import { statics } from "./sources.ts";

const straight = { ...statics, at: "pressure in a straight line across a stiff foot" } as const;

/** Pressure under the pressed edge while all of the foot bears. p mean [Pa], e off-centre [m] <= B/6, B side [m]. */
export const edgeInCore = defineFormula(
  {
    id: "ground.edge-pressure",
    title: "Pressure under the pressed edge",
    symbol: "p_e",
    unit: "Pa",
    text: "p * (1 + 6 * e / B)",
    inputs: { p: "Pa", e: "m", B: "m" },
    validity: "Stiff rectangular foot that bears all over: 0 <= e <= B/6.",
    source: straight,
  },
  ({ p, e, B }) => p * (1 + (6 * e) / B),
);

/** The same where the far edge lifts: the pressed part is 3 (B/2 - e) long. F [N], L side across [m], B/6 < e < B/2. */
export const edgeLifted = defineFormula(
  {
    id: "ground.edge-pressure-lifted",
    title: "Pressure under the pressed edge, far edge lifted",
    symbol: "p_e",
    unit: "Pa",
    text: "2 * F / (3 * L * (B / 2 - e))",
    inputs: { F: "N", L: "m", B: "m", e: "m" },
    validity: "Stiff rectangular foot, B/6 < e < B/2.",
    source: straight,
  },
  ({ F, L, B, e }) => (2 * F) / (3 * L * (B / 2 - e)),
);

/** The same under a round foot that bears all over. p mean [Pa], r radius [m], 0 <= e <= r/4 [m]. */
export const edgeRound = defineFormula(
  {
    id: "ground.edge-pressure-round",
    title: "Pressure under the pressed edge of a round foot",
    symbol: "p_e",
    unit: "Pa",
    text: "p * (1 + 4 * e / r)",
    inputs: { p: "Pa", e: "m", r: "m" },
    validity: "Stiff round foot that bears all over: 0 <= e <= r/4.",
    source: straight,
  },
  ({ p, e, r }) => p * (1 + (4 * e) / r),
);

/**
 * Largest pressure under a stiff foot with the load off its middle, pressure in a straight line across.
 *
 * Null where no closed form holds: off both ways with an edge lifted, or a round foot with its edge lifted.
 */
export function edgePressure(
  contact: Contact,
  load_n: number,
  off_width_m: number,
  off_length_m: number,
  trace?: Trace,
): Qty<"Pa"> | null {
  const F = qty(load_n, "N");
  if (contact.shape === "circle") {
    const r = metres(contact.width_m / 2);
    const e = metres(Math.hypot(off_width_m, off_length_m));
    return e > r / 4 ? null : edgeRound({ p: qty(load_n / (Math.PI * r * r), "Pa"), e, r }, trace);
  }
  const p = qty(load_n / (contact.width_m * contact.length_m), "Pa");
  const sides = [
    { B: contact.width_m, L: contact.length_m, e: off_width_m },
    { B: contact.length_m, L: contact.width_m, e: contact.shape === "strip" ? 0 : off_length_m },
  ].filter((s) => s.e > 0);
  const [one, two] = sides;
  if (!one) return p;
  const at = { B: metres(one.B), e: metres(one.e) };
  if (two) {
    // Both ways inside the core: the two additions over the mean pressure add up.
    if (one.e / one.B + two.e / two.B > 1 / 6) return null;
    const first = edgeInCore({ p, ...at }, trace);
    const second = edgeInCore({ p, B: metres(two.B), e: metres(two.e) }, trace);
    return qty(first + second - p, "Pa");
  }
  if (one.e <= one.B / 6) return edgeInCore({ p, ...at }, trace);
  return edgeLifted({ F, L: metres(one.L), ...at }, trace);
}
