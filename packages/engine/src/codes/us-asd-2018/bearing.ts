import type { Trace } from "../../formula/index.ts";
import { M_PER_IN, metres } from "../../units/index.ts";
import type { Bearing, Contact, Member, Situation } from "../contract.ts";
import { bearingAreaFactor, bearingAtContact } from "./adjusted-formulas.ts";
import { strength } from "./strength.ts";

/** Up to this length, and from this distance to the end on, the wood beside the bearing helps. */
const LONGEST_HELPED_M = 6 * M_PER_IN;
const LEAST_TO_END_M = 3 * M_PER_IN;

/** Bearing across the grain, with the bearing area factor Cb only where it may be used: NDS 3.10.4. */
export function bearing(member: Member, situation: Situation, contact: Contact, trace?: Trace): Bearing {
  const { fcp } = strength(member, situation, trace, ["fcp"]);
  const length = metres(contact.length_m);
  if (contact.to_end_m < LEAST_TO_END_M || length >= LONGEST_HELPED_M) return { strength: fcp, length };
  const Cb = bearingAreaFactor({ l: length }, trace);
  return { strength: bearingAtContact({ Fcp: fcp, Cb }, trace), length };
}
