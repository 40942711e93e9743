import { factorContact, type Factored } from "./solve.ts";
import type { Assembled } from "./assemble.ts";
import type { Contact } from "./types.ts";

/** What a set of touching bearings answers: their push [N], and how far each lifted one hangs over its top [m]. */
export interface ContactAnswer {
  readonly reactions: readonly number[];
  /** Node over bearing top, up positive; 0 where it touches. */
  readonly gaps: readonly number[];
}

/** Factored systems by which bearings touch: each is worked out once. */
export interface ContactStates<T> {
  readonly all: Contact;
  readonly of: (contact: Contact) => T;
  readonly count: () => number;
}

export const keyOf = (contact: Contact): string => contact.map((c) => (c ? "1" : "0")).join("");

export function contactStates<T>(assembled: Assembled, make: (system: Factored) => T): ContactStates<T> {
  const known = new Map<string, T>();
  return {
    all: assembled.grillage.bearings.map(() => true),
    of: (contact) => {
      const key = keyOf(contact);
      let value = known.get(key);
      if (value === undefined) known.set(key, (value = make(factorContact(assembled, contact))));
      return value;
    },
    count: () => known.size,
  };
}

export interface ContactFound {
  readonly contact: Contact;
  /** False when no set of touching bearings holds the load: it tips over. */
  readonly held: boolean;
}

/** Pull [N] and overlap [m] below which a bearing counts as just touching. */
const JUST_N = 1e-6;
const JUST_M = 1e-9;

/**
 * Finds which bearings touch under a load: those that pull are let go, those that would sink into their top are
 * caught again, the worst first. Where that runs in a circle every set is tried.
 *
 * answer  null when the set cannot hold the load
 */
export function findContact(
  start: Contact,
  answer: (contact: Contact) => ContactAnswer | null,
): ContactFound {
  const seen = new Set<string>();
  let contact = start;
  for (;;) {
    const key = keyOf(contact);
    if (seen.has(key)) return tryAll(start, answer);
    seen.add(key);
    const found = answer(contact);
    if (!found) return tryAll(start, answer);
    const change = worstFault(contact, found);
    if (change === null) return { contact, held: true };
    contact = contact.map((c, i) => (i === change ? !c : c));
  }
}

/** The bearing that pulls most, else the one that sinks in most; null when none does either. */
function worstFault(contact: Contact, { reactions, gaps }: ContactAnswer): number | null {
  let worst: number | null = null;
  let most = 0;
  for (const [i, touches] of contact.entries()) {
    const fault = touches ? -reactions[i]! - JUST_N : 0;
    if (fault > most) [worst, most] = [i, fault];
  }
  if (worst !== null) return worst;
  for (const [i, touches] of contact.entries()) {
    const fault = touches ? 0 : -gaps[i]! - JUST_M;
    if (fault > most) [worst, most] = [i, fault];
  }
  return worst;
}

function tryAll(start: Contact, answer: (contact: Contact) => ContactAnswer | null): ContactFound {
  const n = start.length;
  for (let set = 2 ** n - 1; set > 0; set--) {
    const contact = start.map((_, i) => (set >> i) % 2 === 1);
    const found = answer(contact);
    if (found && worstFault(contact, found) === null) return { contact, held: true };
  }
  return { contact: start, held: false };
}
