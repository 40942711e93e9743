import { defineConstant, defineFormula, type Trace } from "../../formula/index.ts";
import { metres, type Qty } from "../../units/index.ts";
import type { Bearing, Contact, Member, Situation } from "../contract.ts";
import { noFactor } from "./factors.ts";
import { ec5 } from "./sources.ts";
import { standing, strength } from "./strength.ts";

const bearingFactor = (id: string, title: string, value: number) =>
  defineConstant(
    `ec5-2004.kc90.${id}`,
    `Factor for compression across the grain, ${title}`,
    "kc90",
    value,
    "1",
    ec5("6.1.5(3) and (4), solid softwood", "memory"),
  );

export const bearingFactors = {
  discrete: bearingFactor("discrete", "on discrete supports", 1.5),
  continuous: bearingFactor("continuous", "on a continuous support", 1.25),
} as const;

/** Bearing strength with kc,90. [Pa]. */
export const bearingWithFactor = defineFormula(
  {
    id: "ec5-2004.bearing",
    title: "Bearing strength at the contact",
    symbol: "kfc90",
    unit: "Pa",
    text: "kc90 * fc90_d",
    inputs: { kc90: "1", fc90_d: "Pa" },
    validity: "Contacts at least twice the depth apart, else kc90 is 1.",
    source: ec5("6.1.5(1)", "memory"),
  },
  ({ kc90, fc90_d }) => kc90 * fc90_d,
);

/**
 * Length that bears: up to 30 mm on each side help, not more than there is wood or half the way to the next contact.
 * l contact, a to the end, n clear to the next contact [m]; lef [m].
 */
export const effectiveContact = defineFormula(
  {
    id: "ec5-2004.bearing-length",
    title: "Effective length of the contact",
    symbol: "lef",
    unit: "m",
    text: "l + min(0.03, a, l, n / 2) + min(0.03, l, n / 2)",
    inputs: { l: "m", a: "m", n: "m" },
    validity: "a >= 0; n clear between the contacts.",
    source: ec5("6.1.5(1)", "memory"),
  },
  ({ l, a, n }) => l + Math.min(0.03, a, l, n / 2) + Math.min(0.03, l, n / 2),
);

/** Bearing across the grain at one contact. */
export function bearing(member: Member, situation: Situation, contact: Contact, trace?: Trace): Bearing {
  const { fcp } = strength(member, situation, trace, ["fcp"]);
  const { h } = standing(member, situation.use);
  const lef = effectiveContact(
    { l: metres(contact.length_m), a: metres(contact.to_end_m), n: metres(contact.to_next_m) },
    trace,
  );
  const isApart = contact.to_next_m >= 2 * h;
  const kc90: Qty<"1"> = isApart ? bearingFactors[contact.support]({}, trace) : noFactor({});
  return { strength: bearingWithFactor({ kc90, fc90_d: fcp }, trace), length: lef };
}
