import { shearModulus, shearStiffness, torsionConstant } from "../grillage/index.ts";
import { qty, type Qty } from "../units/index.ts";
import type { MemberStiffness, Rest } from "./recipe.ts";

/** Stiffness of a rectangle `high` upward and `wide` across. E [Pa] > 0, G = E/16; sides [m] > 0. */
export function rectangleStiffness(E: Qty<"Pa">, wide_m: number, high_m: number): MemberStiffness {
  const G = shearModulus({ E });
  const [a, b] = [Math.max(wide_m, high_m), Math.min(wide_m, high_m)];
  return {
    ei: (E * wide_m * high_m ** 3) / 12,
    ga: shearStiffness({ G, A: qty(wide_m * high_m, "m2") }),
    gj: G * torsionConstant({ a: qty(a, "m"), b: qty(b, "m") }),
  };
}

/** A module rests on both ends of each of its stringers. */
export const moduleRests = (stringers: number, length_m: number): Rest[] =>
  Array.from({ length: stringers }, (_, stringer) => [0, length_m].map((x_m) => ({ x_m, stringer }))).flat();

/**
 * A platform rests on sills under its four edges: those under the edges that the stringers end at carry the stringers
 * over them, those under the two other edges carry the outer stringers along their length.
 *
 * y     stringer middles across [m], rising; side and sill length [m]
 * ends  length of the sills that the stringers end at, where it is another [m]
 */
export function platformRests(y: readonly number[], side: number, sill: number, ends = sill): Rest[] {
  const last = y.length - 1;
  const from = Math.max(0, (side - sill) / 2);
  return y.flatMap((v, stringer): Rest[] => {
    const atEnds = Math.abs(v) <= ends / 2 + 1e-6 ? [0, side] : [];
    const along = stringer === 0 || stringer === last ? [from, side - from] : [];
    return [...new Set([...atEnds, ...along])].sort((a, b) => a - b).map((x_m) => ({ x_m, stringer }));
  });
}
