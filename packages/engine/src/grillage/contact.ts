import type { Assembled } from "./assemble.ts";
import { displacements, factorContact, reactions, type Factored } from "./solve.ts";
import type { Contact, NodeLoad } from "./types.ts";

export const keyOf = (contact: Contact): string => contact.map((c) => (c ? "1" : "0")).join("");

/** Factors by which bearings touch: each set is worked out once, exact and with soft hold. */
export interface ContactFactors {
  readonly all: Contact;
  readonly exact: (contact: Contact) => Factored;
  readonly soft: (contact: Contact) => Factored;
}

export function contactFactors(assembled: Assembled): ContactFactors {
  const remember = (soft: boolean) => {
    const known = new Map<string, Factored>();
    return (contact: Contact): Factored => {
      const key = keyOf(contact);
      let value = known.get(key);
      if (!value) known.set(key, (value = factorContact(assembled, contact, soft)));
      return value;
    };
  };
  return {
    all: assembled.grillage.bearings.map(() => true),
    exact: remember(false),
    soft: remember(true),
  };
}

/** Pull [N] and overlap [m] below which a bearing counts as just touching. */
const JUST_N = 1e-6;
const JUST_M = 1e-9;
/** A part that goes this far down has fallen [m]. */
const FALLEN = 1;
/** Changes after which a search that has not settled counts as one that cannot. */
const MOST_CHANGES = 60;

/** Whether a set of bearings is right for what it answers: none pulls, none is sunk into. */
export const isRight = (
  contact: Contact,
  push: (bearing: number) => number,
  gap: (bearing: number) => number,
): boolean => contact.every((touches, b) => (touches ? push(b) >= -JUST_N : gap(b) >= -JUST_M));

/**
 * Finds which bearings touch under a load; null when no set of them holds it and the part tips.
 *
 * Those that pull are let go, those that would be sunk into are caught again, the worst first. Bearings let go keep a
 * hold of 1 N/m during the search, so that every set on the way can be solved; the set found is right without it.
 */
export function findContact(
  factors: ContactFactors,
  loads: readonly NodeLoad[],
  start: Contact = factors.all,
): Contact | null {
  let contact = start;
  for (let change = 0; change < MOST_CHANGES; change++) {
    const system = factors.soft(contact);
    if (!system.stable) return null;
    const u = displacements(system, loads);
    const worst = worstFault(system, u, loads);
    if (worst === null) return isHeld(factors.exact(contact), loads) ? contact : null;
    contact = contact.map((c, i) => (i === worst ? !c : c));
  }
  return null;
}

/** Solves without the soft hold and looks whether the part still stands. */
function isHeld(system: Factored, loads: readonly NodeLoad[]): boolean {
  if (!system.stable) return false;
  const u = displacements(system, loads);
  for (let i = 0; i < u.length; i += 3) if (!(Math.abs(u[i]!) < FALLEN)) return false;
  return true;
}

/** The bearing that pulls most, else the one that is sunk into most; null when none does either. */
function worstFault(system: Factored, u: Float64Array, loads: readonly NodeLoad[]): number | null {
  const { bearings } = system.assembled.grillage;
  const push = reactions(system, u, loads);
  let worst: number | null = null;
  let most = 0;
  for (const [b] of bearings.entries()) {
    const fault = system.contact[b] ? -push[b]! - JUST_N : 0;
    if (fault > most) [worst, most] = [b, fault];
  }
  if (worst !== null) return worst;
  for (const [b, { node, settled_m }] of bearings.entries()) {
    const fault = system.contact[b] ? 0 : u[node * 3]! - settled_m - JUST_M;
    if (fault > most) [worst, most] = [b, fault];
  }
  return worst;
}
