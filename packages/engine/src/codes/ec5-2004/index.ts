export { ec52004 } from "./code.ts";
export { ec52004Formulas } from "./formulas.ts";
export { ec5 } from "./sources.ts";
export { ec5Bending } from "./bending-method.ts";
export { ec5LateralBuckling } from "./buckling-method.ts";
export { durationClass, kdef, kmod } from "./duration.ts";
export { bearingDesign, bendingDesign, compressionDesign, shearDesign } from "./strength-formulas.ts";
export { criticalBendingStress, lateralBucklingFactor, relativeSlenderness } from "./stability.ts";
