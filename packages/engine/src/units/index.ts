export { qty, DomainError, type Qty, type Unit } from "./quantity.ts";
export {
  KG_PER_LB,
  M_PER_FT,
  M_PER_IN,
  M_PER_MI,
  M_PER_YD,
  N_PER_LBF,
  PA_PER_PSF,
  PA_PER_PSI,
  STANDARD_GRAVITY,
  feet,
  inches,
  kilograms,
  metres,
  millimetres,
  newtons,
  pascals,
  pounds,
  poundsForce,
  psf,
  psi,
} from "./convert.ts";
export type { Level } from "./level.ts";
export { readLength } from "./read-length.ts";
export { feetInches, showQuantity, showShareOfLimit, type UnitSystem } from "./display.ts";
