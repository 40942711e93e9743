import { defineConstant, defineFormula, recordValue, type Trace } from "../formula/index.ts";
import { qty, type Qty } from "../units/index.ts";
import { broms, bromsStiffness, geometry } from "./sources.ts";

/** Reaction of the ground along a stake. su [Pa], b width that it sees [m]; q [N/m]. */
export const groundReaction = defineFormula(
  {
    id: "anchor.lateral.reaction",
    title: "Reaction of the ground along the stake",
    symbol: "q",
    unit: "N/m",
    text: "9 * su * b",
    inputs: { su: "Pa", b: "m" },
    validity: "Undrained clay or peat, under the ignored top.",
    source: broms("9 su b"),
  },
  ({ su, b }) => 9 * su * b,
);

/** Top of the ground that gives no side support. b [m]; t [m]. */
export const ignoredTop = defineFormula(
  {
    id: "anchor.lateral.ignored-top",
    title: "Top of the ground that is ignored",
    symbol: "t",
    unit: "m",
    text: "max(1.5 * b, 0.2)",
    inputs: { b: "m" },
    validity: "Cracks, roots and stirred mud at the surface.",
    source: {
      ...broms("no reaction over 1.5 b"),
      status: "memory",
      at: "1.5 b, and 0.2 m at least (from memory)",
    },
  },
  ({ b }) => Math.max(1.5 * b, 0.2),
);

/** Length of the stake that leans on the ground. L embedment, t [m]; l [m]. */
export const heldLength = defineFormula(
  {
    id: "anchor.lateral.held-length",
    title: "Length of the stake that leans on the ground",
    symbol: "l",
    unit: "m",
    text: "max(0, L - t)",
    inputs: { L: "m", t: "m" },
    validity: "Under the ignored top.",
    source: geometry("embedment less the top"),
  },
  ({ L, t }) => Math.max(0, L - t),
);

/**
 * Depth under the ignored top where the shear is gone, short free head: closed form of f = H / q and
 * H (E + f / 2) = q (l - f)^2 / 4, with E = e + t, written so that nothing cancels. l, e, t [m] >= 0; f [m].
 */
export const freeDepth = defineFormula(
  {
    id: "anchor.lateral.free-depth",
    title: "Depth of the largest moment under the ignored top",
    symbol: "f",
    unit: "m",
    text: "l^2 / (2 * (e + t) + l + sqrt((2 * (e + t) + l)^2 + l^2))",
    inputs: { l: "m", e: "m", t: "m" },
    validity: "Short stake, free head: it turns as a whole; e + t > 0.",
    source: broms("f = H / (9 su b), M = 2.25 su b g^2; closed form", "computed"),
  },
  ({ l, e, t }) => l ** 2 / (2 * (e + t) + l + Math.sqrt((2 * (e + t) + l) ** 2 + l ** 2)),
);

/** Ultimate horizontal force of a short stake with a free head. q [N/m], f [m]; H_u [N]. */
export const freeForce = defineFormula(
  {
    id: "anchor.lateral.free-force",
    title: "Horizontal force of the stake, free head",
    symbol: "H_u",
    unit: "N",
    text: "q * f",
    inputs: { q: "N/m", f: "m" },
    validity: "Ultimate, short stake.",
    source: broms("H = 9 su b f"),
  },
  ({ q, f }) => q * f,
);

/** Ultimate horizontal force of a short stake whose head cannot turn. q [N/m], l [m]; H_u [N]. */
export const fixedForce = defineFormula(
  {
    id: "anchor.lateral.fixed-force",
    title: "Horizontal force of the stake, fixed head",
    symbol: "H_u",
    unit: "N",
    text: "q * l",
    inputs: { q: "N/m", l: "m" },
    validity: "Ultimate, short stake that slides without turning; the frame must hold the head's moment.",
    source: broms("H = 9 su b (L - 1.5 b)", "memory"),
  },
  ({ q, l }) => q * l,
);

/** Largest moment in a stake with a free head under a force. H [N], e, t [m], q [N/m] > 0; M [N*m]. */
export const freeMoment = defineFormula(
  {
    id: "anchor.lateral.free-moment",
    title: "Largest moment in the stake, free head",
    symbol: "M",
    unit: "N*m",
    text: "H * (e + t + 0.5 * H / q)",
    inputs: { H: "N", e: "m", t: "m", q: "N/m" },
    validity: "H at a height e over the ground, q > 0.",
    source: broms("M = H (e + 1.5 b + 0.5 f)"),
  },
  ({ H, e, t, q }) => H * (e + t + (0.5 * H) / q),
);

/** Moment at a head that cannot turn. H [N], e, t, l [m]; M [N*m]. */
export const fixedMoment = defineFormula(
  {
    id: "anchor.lateral.fixed-moment",
    title: "Moment at the fixed head",
    symbol: "M",
    unit: "N*m",
    text: "H * (e + t + 0.5 * l)",
    inputs: { H: "N", e: "m", t: "m", l: "m" },
    validity: "Ground pushes evenly along l, head at a height e over the ground.",
    source: broms("M = H (0.5 L + 0.75 b) for a head at the ground", "computed"),
  },
  ({ H, e, t, l }) => H * (e + t + 0.5 * l),
);

/**
 * Force at which the wood of a stake breaks: in the ground with a free head, at the head with a fixed one. The ground
 * pushes with all it has along H / q under the ignored top and not below, which it can always do in a stake that is
 * long enough: for a fixed head this is on the safe side. q [N/m], e, t [m], M_w what the wood carries [N*m]; H_w [N].
 */
export const woodForce = defineFormula(
  {
    id: "anchor.lateral.wood-force",
    title: "Horizontal force at which the wood breaks",
    symbol: "H_w",
    unit: "N",
    text: "2 * M_w / (e + t + sqrt((e + t)^2 + 2 * M_w / q))",
    inputs: { q: "N/m", e: "m", t: "m", M_w: "N*m" },
    validity: "q > 0; the ground holds the stake deep enough.",
    source: broms("H (e + 1.5 b + 0.5 f) = M, solved for H", "computed"),
  },
  ({ q, e, t, M_w }) => (2 * M_w) / (e + t + Math.sqrt((e + t) ** 2 + (2 * M_w) / q)),
);

/** Moment that the wood carries. S [m3], f_b bending strength [Pa]; M_w [N*m]. */
export const woodMoment = defineFormula(
  {
    id: "anchor.lateral.wood-moment",
    title: "Moment that the wood carries",
    symbol: "M_w",
    unit: "N*m",
    text: "S * f_b",
    inputs: { S: "m3", f_b: "Pa" },
    validity: "Straight stake, no knot at the ground; f_b as given.",
    source: bromsStiffness("My = S fb"),
  },
  ({ S, f_b }) => S * f_b,
);

/** Side stiffness of the ground times the width, k_h b. n_1, n_2 [1] by strength and material, q_u unconfined strength [Pa]; K [Pa]. */
export const sideStiffness = defineFormula(
  {
    id: "anchor.lateral.side-stiffness",
    title: "Side stiffness of the ground along the stake",
    symbol: "K",
    unit: "Pa",
    text: "80 * n_1 * n_2 * q_u",
    inputs: { n_1: "1", n_2: "1", q_u: "Pa" },
    validity: "Cohesive ground; n_1 0.32 soft to 0.40 stiff, n_2 1.30 wood, 1.00 steel, 1.15 concrete.",
    source: bromsStiffness("kh = n1 n2 80 qu / b"),
  },
  ({ n_1, n_2, q_u }) => 80 * n_1 * n_2 * q_u,
);
export const woodFactor = defineConstant(
  "anchor.lateral.wood-factor",
  "Factor of wooden piles on the side stiffness",
  "n_2",
  1.3,
  "1",
  bromsStiffness("1.30 for wood"),
);
/** Factor of the ground's strength on the side stiffness. q_u unconfined strength [Pa]; n_1 [1]. */
export function strengthFactor(q_u: Qty<"Pa">, trace?: Trace): Qty<"1"> {
  const value = qty(q_u < 48_000 ? 0.32 : q_u <= 191_000 ? 0.36 : 0.4, "1");
  recordValue(trace, {
    id: "anchor.lateral.strength-factor",
    title: "Factor of the ground's strength on the side stiffness",
    symbol: "n_1",
    value,
    unit: "1",
    source: {
      ...bromsStiffness("0.32 under 48 kPa, 0.36 to 191 kPa, 0.40 over it; 0.36 seen, the rest from memory"),
      status: "memory",
    },
    how: "as tabulated",
  });
  return value;
}

/** Length over which the stake bends in the ground, 1 / beta. E [Pa], I [m4], K [Pa] > 0; L_b [m]. */
export const bendingLength = defineFormula(
  {
    id: "anchor.lateral.bending-length",
    title: "Length over which the stake bends in the ground, 1 / beta",
    symbol: "L_b",
    unit: "m",
    text: "(4 * E * I / K)^0.25",
    inputs: { E: "Pa", I: "m4", K: "Pa" },
    validity: "K > 0.",
    source: bromsStiffness("beta = (kh b / (4 E I))^(1/4)"),
  },
  ({ E, I, K }) => ((4 * E * I) / K) ** 0.25,
);
/** Slenderness beta L. L embedment, L_b [m]; s_L [1]; up to 2.25 a free head is short, up to 0.5 a fixed one is. */
export const stakeSlenderness = defineFormula(
  {
    id: "anchor.lateral.slenderness",
    title: "Slenderness of the stake, beta L",
    symbol: "s_L",
    unit: "1",
    text: "L / L_b",
    inputs: { L: "m", L_b: "m" },
    validity: "Free head: short up to 2.25.",
    source: bromsStiffness("beta L against 2.25"),
  },
  ({ L, L_b }) => L / L_b,
);
/** Largest slenderness of a short stake with a free head; with a fixed one 0.5 (from memory). */
export const SHORT_FREE = 2.25;
export const SHORT_FIXED = 0.5;

export const bromsFormulas = [
  groundReaction,
  ignoredTop,
  heldLength,
  freeDepth,
  freeForce,
  fixedForce,
  freeMoment,
  fixedMoment,
  woodForce,
  woodMoment,
  sideStiffness,
  woodFactor,
  bendingLength,
  stakeSlenderness,
] as const;
