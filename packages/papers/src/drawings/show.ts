import type { Plan } from "@causey/engine/plan";
import { feetInches, showQuantity, type Unit } from "@causey/engine/units";

/** Values in the plan's units, as every other page shows them. */
export const shower =
  ({ units }: Pick<Plan, "units">) =>
  (value: number, unit: Unit): string =>
    showQuantity(value, unit, units);

/** A length of a part: to the sixteenth of an inch, or in whole millimetres. */
export const partLength = (metres: number, { units }: Pick<Plan, "units">): string =>
  units === "us" ? feetInches(metres, 16) : `${Math.round(metres * 1000)} mm`;

/** A level: to the hundredth of a metre, or in feet and inches. */
export const levelText = (metres: number, { units }: Pick<Plan, "units">): string =>
  units === "us" ? feetInches(metres, 2) : `${metres.toFixed(2)} m`;

export const money = (amount: number, currency: string): string =>
  `${currency} ${amount.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;

/** An amount in whole units of its currency, for a page on which cents would feign exactness. */
export const wholeMoney = (amount: number, currency: string): string =>
  `${currency} ${Math.round(amount).toLocaleString("en-US", { maximumFractionDigits: 0 })}`;
