import { defineFormula } from "../../formula/index.ts";
import { nds } from "./sources.ts";

const validity = "Sawn lumber 2 in to 4 in thick, up to 38 C in service.";
const source = nds("Table 4.3.1", "memory");

/** Adjusted bending strength. All [1] but Fb [Pa]. */
export const adjustedBending = defineFormula(
  {
    id: "us-asd-2018.adjusted.bending",
    title: "Bending strength that may be used",
    symbol: "Fb'",
    unit: "Pa",
    text: "Fb * CD * CM * CL * CF * Cfu * Ci * Cr",
    inputs: { Fb: "Pa", CD: "1", CM: "1", CL: "1", CF: "1", Cfu: "1", Ci: "1", Cr: "1" },
    validity,
    source,
  },
  ({ Fb, CD, CM, CL, CF, Cfu, Ci, Cr }) => Fb * CD * CM * CL * CF * Cfu * Ci * Cr,
);

/** Bending strength before the stability and flat-use factors, the measure of sideways buckling. */
export const bendingBeforeStability = defineFormula(
  {
    id: "us-asd-2018.adjusted.bending-before-stability",
    title: "Bending strength before sideways buckling",
    symbol: "Fb*",
    unit: "Pa",
    text: "Fb * CD * CM * CF * Ci * Cr",
    inputs: { Fb: "Pa", CD: "1", CM: "1", CF: "1", Ci: "1", Cr: "1" },
    validity,
    source: nds("3.3.3.8", "seen"),
  },
  ({ Fb, CD, CM, CF, Ci, Cr }) => Fb * CD * CM * CF * Ci * Cr,
);

export const adjustedShear = defineFormula(
  {
    id: "us-asd-2018.adjusted.shear",
    title: "Shear strength that may be used",
    symbol: "Fv'",
    unit: "Pa",
    text: "Fv * CD * CM * Ci",
    inputs: { Fv: "Pa", CD: "1", CM: "1", Ci: "1" },
    validity,
    source,
  },
  ({ Fv, CD, CM, Ci }) => Fv * CD * CM * Ci,
);

export const adjustedBearing = defineFormula(
  {
    id: "us-asd-2018.adjusted.bearing",
    title: "Bearing strength across the grain that may be used",
    symbol: "Fcp'",
    unit: "Pa",
    text: "Fcp * CM",
    inputs: { Fcp: "Pa", CM: "1" },
    validity: `${validity} Bearing area factor Cb 1: at the end of a member.`,
    source,
  },
  ({ Fcp, CM }) => Fcp * CM,
);

export const adjustedCompression = defineFormula(
  {
    id: "us-asd-2018.adjusted.compression",
    title: "Compression strength along the grain that may be used",
    symbol: "Fc'",
    unit: "Pa",
    text: "Fc * CD * CM * CF * Ci * CP",
    inputs: { Fc: "Pa", CD: "1", CM: "1", CF: "1", Ci: "1", CP: "1" },
    validity,
    source,
  },
  ({ Fc, CD, CM, CF, Ci, CP }) => Fc * CD * CM * CF * Ci * CP,
);

export const adjustedStiffness = defineFormula(
  {
    id: "us-asd-2018.adjusted.stiffness",
    title: "Stiffness that may be used",
    symbol: "E'",
    unit: "Pa",
    text: "E * CM * Ci",
    inputs: { E: "Pa", CM: "1", Ci: "1" },
    validity: `${validity} The same for E and Emin.`,
    source,
  },
  ({ E, CM, Ci }) => E * CM * Ci,
);

/** Bearing area factor for a bearing shorter than 6 in that lies 3 in or more from the end. l [m]; Cb [1]. */
export const bearingAreaFactor = defineFormula(
  {
    id: "us-asd-2018.bearing-area",
    title: "Bearing area factor",
    symbol: "Cb",
    unit: "1",
    text: "(l + 0.375 * 0.0254) / l",
    inputs: { l: "m" },
    validity: "Bearing length under 6 in, not nearer than 3 in to the end of the member.",
    source: nds("equation 3.10-2", "memory"),
  },
  ({ l }) => (l + 0.375 * 0.0254) / l,
);

/** Bearing strength with the area factor. Fcp [Pa], Cb [1]; Fcp' [Pa]. */
export const bearingAtContact = defineFormula(
  {
    id: "us-asd-2018.adjusted.bearing-at-contact",
    title: "Bearing strength with the wood beside it",
    symbol: "Fcp'",
    unit: "Pa",
    text: "Fcp * Cb",
    inputs: { Fcp: "Pa", Cb: "1" },
    validity: "Fcp with all its other factors.",
    source,
  },
  ({ Fcp, Cb }) => Fcp * Cb,
);
