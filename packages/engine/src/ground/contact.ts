import { defineFormula, type Trace } from "../formula/index.ts";
import { DomainError, metres, qty, type Qty } from "../units/index.ts";
import { bearingLength } from "./foot-pressure.ts";
import { circleUnderEdgeLoad } from "./sources.ts";

export type ContactShape = "strip" | "rectangle" | "square" | "circle";

/** What touches the ground, seen from above. A square and a circle have length = width; a strip is far longer than wide. */
export interface Contact {
  readonly shape: ContactShape;
  /** Side, or diameter [m] > 0. */
  readonly width_m: number;
  /** Other side; of a strip the stretch that the load presses [m] > 0. */
  readonly length_m: number;
}

/** The part of a contact that bears evenly under an off-centre load: a rectangle, the shorter side first. */
export interface Bearing {
  readonly shape: ContactShape;
  readonly B: Qty<"m">;
  readonly L: Qty<"m">;
  readonly area: Qty<"m2">;
}

/** Area of a round foot that bears evenly. r radius [m] > 0, e off-centre distance [m], 0 <= e < r; A_e [m2]. */
export const effectiveCircle = defineFormula(
  {
    id: "ground.bearing.circle-area",
    title: "Area of the round foot that bears",
    symbol: "A_e",
    unit: "m2",
    text: "2 * (r^2 * acos(e / r) - e * sqrt(r^2 - e^2))",
    inputs: { r: "m", e: "m" },
    validity: "0 <= e < r.",
    source: circleUnderEdgeLoad,
  },
  ({ r, e }) => 2 * (r ** 2 * Math.acos(e / r) - e * Math.sqrt(r ** 2 - e ** 2)),
);

/** Longer side of the rectangle that stands for that area. A_e [m2] > 0, r and e as above [m]; L_e [m]. */
export const effectiveCircleLength = defineFormula(
  {
    id: "ground.bearing.circle-length",
    title: "Longer side of the rectangle that stands for it",
    symbol: "L_e",
    unit: "m",
    text: "sqrt(A_e * sqrt((r + e) / (r - e)))",
    inputs: { A_e: "m2", r: "m", e: "m" },
    validity: "0 <= e < r: sides as 2 sqrt(r^2 - e^2) to 2 (r - e).",
    source: circleUnderEdgeLoad,
  },
  ({ A_e, r, e }) => Math.sqrt(A_e * Math.sqrt((r + e) / (r - e))),
);

/**
 * The part of the contact that bears evenly: B' = B - 2 e each way (Meyerhof), for a circle the lens about the load.
 *
 * off_width_m, off_length_m  how far from the middle the load acts, along either side [m] >= 0, under half that side.
 * A strip's length takes no offset. Throws `DomainError` where the load stands outside the contact.
 */
export function bearingPart(
  contact: Contact,
  off_width_m: number,
  off_length_m: number,
  trace?: Trace,
): Bearing {
  const { shape, width_m, length_m } = contact;
  if (!(width_m > 0 && length_m > 0)) throw new DomainError("contact-without-size", { width_m, length_m });
  if (!(off_width_m >= 0 && off_length_m >= 0)) throw new DomainError("offset-below-zero", { off_width_m });
  if (shape === "circle") return roundPart(width_m / 2, Math.hypot(off_width_m, off_length_m), trace);
  const along = (c: number, e: number): Qty<"m"> => {
    if (e >= c / 2) throw new DomainError("load-beside-the-foot", { side_m: c, off_m: e });
    return e === 0 ? metres(c) : bearingLength({ c: metres(c), e: metres(e) }, trace);
  };
  const a = along(width_m, off_width_m);
  const b = along(length_m, shape === "strip" ? 0 : off_length_m);
  const [B, L] = a <= b || shape === "strip" ? [a, b] : [b, a];
  return { shape: shape === "square" && a !== b ? "rectangle" : shape, B, L, area: qty(a * b, "m2") };
}

function roundPart(radius: number, off: number, trace?: Trace): Bearing {
  if (off >= radius) throw new DomainError("load-beside-the-foot", { radius_m: radius, off_m: off });
  const r = metres(radius);
  const e = metres(off);
  const area = effectiveCircle({ r, e }, off > 0 ? trace : undefined);
  if (off === 0) return { shape: "circle", B: metres(2 * radius), L: metres(2 * radius), area };
  const L = effectiveCircleLength({ A_e: area, r, e }, trace);
  return { shape: "rectangle", B: metres(Math.min(area / L, L)), L, area };
}
