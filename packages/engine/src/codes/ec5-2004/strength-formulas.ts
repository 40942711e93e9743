import { defineFormula } from "../../formula/index.ts";
import { ec5, projectChoice } from "./sources.ts";

const validity = "Solid softwood; factors as the member stands.";

/** Design bending strength. f characteristic [Pa], factors [1]; fm,d [Pa]. */
export const bendingDesign = defineFormula(
  {
    id: "ec5-2004.design.bending",
    title: "Design bending strength",
    symbol: "fm_d",
    unit: "Pa",
    text: "kmod * kh * ksys * kinc * kcrit * fm_k / gM",
    inputs: { fm_k: "Pa", kmod: "1", kh: "1", ksys: "1", kinc: "1", kcrit: "1", gM: "1" },
    validity,
    source: ec5("2.4.1(1), 3.2(3), 6.3.3(3), 6.6", "seen"),
  },
  ({ fm_k, kmod, kh, ksys, kinc, kcrit, gM }) => (kmod * kh * ksys * kinc * kcrit * fm_k) / gM,
);

/** Design shear strength on the full rectangle: cracks leave kcr of the breadth. f [Pa], factors [1]; [Pa]. */
export const shearDesign = defineFormula(
  {
    id: "ec5-2004.design.shear",
    title: "Design shear strength on the full breadth",
    symbol: "fv_d",
    unit: "Pa",
    text: "kcr * kmod * kinc * fv_k / gM",
    inputs: { fv_k: "Pa", kcr: "1", kmod: "1", kinc: "1", gM: "1" },
    validity: `${validity} kcr 1 only where cracks are ruled out.`,
    source: ec5("2.4.1(1) and 6.1.7", "memory"),
  },
  ({ fv_k, kcr, kmod, kinc, gM }) => (kcr * kmod * kinc * fv_k) / gM,
);

/** Design compression strength across the grain, before kc,90. [Pa]. */
export const bearingDesign = defineFormula(
  {
    id: "ec5-2004.design.bearing",
    title: "Design strength in compression across the grain",
    symbol: "fc90_d",
    unit: "Pa",
    text: "kmod * fc90_k / gM",
    inputs: { fc90_k: "Pa", kmod: "1", gM: "1" },
    validity,
    source: ec5("2.4.1(1)", "seen"),
  },
  ({ fc90_k, kmod, gM }) => (kmod * fc90_k) / gM,
);

/** Design compression strength along the grain, kc for the lean of a post. [Pa]. */
export const compressionDesign = defineFormula(
  {
    id: "ec5-2004.design.compression",
    title: "Design strength in compression along the grain",
    symbol: "fc0_d",
    unit: "Pa",
    text: "kc * kmod * kinc * fc0_k / gM",
    inputs: { fc0_k: "Pa", kc: "1", kmod: "1", kinc: "1", gM: "1" },
    validity,
    source: ec5("2.4.1(1) and 6.3.2(3)", "seen"),
  },
  ({ fc0_k, kc, kmod, kinc, gM }) => (kc * kmod * kinc * fc0_k) / gM,
);

/** Stiffness for deflection at once (E0,mean) or for stability (E0,05). [Pa]. */
export const stiffness = defineFormula(
  {
    id: "ec5-2004.stiffness",
    title: "Stiffness that may be used",
    symbol: "E",
    unit: "Pa",
    text: "E_0 * kinc",
    inputs: { E_0: "Pa", kinc: "1" },
    validity: "At once: what lasts creeps by kdef.",
    source: projectChoice("EN 338 value, less where the timber is incised"),
  },
  ({ E_0, kinc }) => E_0 * kinc,
);
