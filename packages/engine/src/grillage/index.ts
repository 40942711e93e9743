import type { AnyFormula } from "../formula/index.ts";
import { shearModulus, shearStiffness, torsionConstant } from "./section-stiffness.ts";

export { assemble, PER_NODE, type Assembled } from "./assemble.ts";
export { contactFactors, findContact, isRight, keyOf, type ContactFactors } from "./contact.ts";
export { beamForces, displacements, factorContact, reactions, type Factored } from "./solve.ts";
export { shearModulus, shearStiffness, torsionConstant };
export type { Beam, BeamForces, Bearing, Contact, Grillage, GrillageNode, NodeLoad } from "./types.ts";

export const grillageFormulas: readonly AnyFormula[] = [torsionConstant, shearModulus, shearStiffness];
