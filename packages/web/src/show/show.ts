import type { SourceStatus } from "@causey/engine/formula";
import { M_PER_FT, showQuantity, showShareOfLimit, type Unit, type UnitSystem } from "@causey/engine/units";

/** How the user reads numbers: the plan's units and the currency of its price list. */
export interface Reading {
  readonly units: UnitSystem;
  readonly currency: string;
}

const localeOf = (units: UnitSystem): string => (units === "us" ? "en-US" : "en-GB");

const formats = new Map<string, Intl.NumberFormat>();

/** An amount in the price list's currency, written as the reader's country writes it. */
export function showMoney(amount: number, { units, currency }: Reading): string {
  const key = `${units} ${currency}`;
  const format = formats.get(key) ?? new Intl.NumberFormat(localeOf(units), { style: "currency", currency });
  formats.set(key, format);
  return format.format(amount);
}

/** Any value of the engine in words. A bare whole number is a count and shows no decimals. */
export function show(value: number, unit: Unit, reading: Reading): string {
  if (unit === "money") return showMoney(value, reading);
  const words = showQuantity(value, unit, reading.units);
  return unit === "1" && Number.isInteger(value) ? words.replace(/\.0+$/, "") : words;
}

/** A grade as rise over run, as carpenters and officers say it: `8.3 %, 1 in 12`. */
export function showGrade(rise_over_run: number): string {
  const percent = `${Number((rise_over_run * 100).toFixed(1))} %`;
  return rise_over_run >= 0.0005 ? `${percent}, 1 in ${Math.round(1 / rise_over_run)}` : percent;
}

/** The value of a figure in words. */
export const showFigure = (
  { id, value, unit }: { readonly id: string; readonly value: number; readonly unit: Unit },
  reading: Reading,
): string => (id === "steepest-grade" ? showGrade(value) : show(value, unit, reading));

/** Demand over capacity, as it stands in a cell: `.42`, `1.12`. Beyond ten the ratio says no more. */
export function showShare(utilisation: number): string {
  if (utilisation > 10) return ">10";
  return showShareOfLimit(utilisation).replace(/^0\./, ".");
}

/** A step that is a round number of the chosen unit: `0.2 ft`, `0.5 m`. */
export const showRound = (metres: number, units: UnitSystem): string => {
  const value = units === "us" ? metres / M_PER_FT : metres;
  return `${Number(value.toPrecision(3))} ${units === "us" ? "ft" : "m"}`;
};

/** What is said beside a source that nobody has looked up. */
export const statusWords: Readonly<Record<SourceStatus, string | null>> = {
  seen: null,
  computed: "worked out here",
  memory: "from memory, confirm",
  practice: "common practice, no source",
  project: "decision of this project",
};

/** A formula's text with the signs a printed page would use; the text itself is the code. */
export const printFormula = (text: string): string =>
  text
    .replaceAll(" * ", " · ")
    .replaceAll(/\^2(?!\d)/g, "²")
    .replaceAll(/\^3(?!\d)/g, "³")
    .replaceAll(/\bpi\b/g, "π");

/** `1 plot`, `3 plots`. */
export const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** Distance along the walkway, as the trade says it on either side of the ocean. */
export const alongWord = (units: UnitSystem): string => (units === "us" ? "distance along" : "chainage");
