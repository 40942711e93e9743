import type { Json } from "@causey/engine/formula";
import type { Findings } from "../problem/index.ts";
import type { RawFeature } from "./features.ts";

const LONGEST_TEXT = 500;
const YES: ReadonlySet<Json> = new Set<Json>([true, 1, "true", "yes", "1"]);
const NO: ReadonlySet<Json> = new Set<Json>([false, 0, "false", "no", "0"]);

/** Reads the properties of one feature; each fault is reported, and the reading goes on with a stand-in. */
export class Properties {
  readonly #found: Findings;
  readonly #feature: RawFeature;
  /** False once a fault was reported: the feature is then left out. */
  isSound = true;

  constructor(found: Findings, feature: RawFeature) {
    this.#found = found;
    this.#feature = feature;
  }

  /** A property that is missing and one that is null are the same: programs write null for an empty field. */
  value(key: string): Json | undefined {
    const { properties } = this.#feature;
    const v = Object.hasOwn(properties, key) ? properties[key] : undefined;
    return v === null || (typeof v === "string" && v.trim() === "") ? undefined : v;
  }

  id(): string {
    const { id } = this.#feature;
    if (id !== null && id.length <= 80 && !/\p{Cc}/u.test(id)) return id;
    this.fault(
      "id",
      id,
      "needs an id of at most 80 characters",
      'Give each feature a property "id" of its own.',
    );
    return "";
  }

  text(key: string, mend: string): string {
    const v = this.value(key);
    if (typeof v === "string" && v.trim().length <= LONGEST_TEXT && !/\p{Cc}/u.test(v)) return v.trim();
    this.fault(key, v, `needs "${key}" as one line of text of at most ${LONGEST_TEXT} characters`, mend);
    return "";
  }

  /** One line of text; undefined when the property is missing. */
  optionalText(key: string): string | undefined {
    return this.value(key) === undefined ? undefined : this.text(key, `Give "${key}" as text.`);
  }

  choice<T extends string>(key: string, choices: readonly T[]): T {
    const v = this.value(key);
    const choice = choices.find((c) => c === v);
    if (choice !== undefined) return choice;
    this.fault(key, v, `needs "${key}" as one of the known words`, `Use one of: ${choices.join(", ")}.`);
    return choices[0]!;
  }

  /** A number of at least `least`; undefined when the property is missing. */
  number(key: string, least: number): number | undefined {
    const v = this.value(key);
    if (v === undefined || (typeof v === "number" && v >= least)) return v;
    this.fault(
      key,
      v,
      `has "${key}" that is not a number of at least ${least}`,
      `Give "${key}" as a number.`,
    );
    return undefined;
  }

  /** Yes or no, as geographic programs write it; no when it is missing. */
  flag(key: string): boolean {
    const v = this.value(key);
    const word = typeof v === "string" ? v.trim().toLowerCase() : v;
    if (word === undefined || NO.has(word)) return false;
    if (YES.has(word)) return true;
    this.fault(key, v, `has "${key}" that is neither true nor false`, `Set "${key}" to true or false.`);
    return true;
  }

  /** Month and day, `04-15`; undefined when the property is missing. */
  monthDay(key: string): string | undefined {
    const v = this.value(key);
    if (v === undefined || (typeof v === "string" && isMonthDay(v))) return v;
    this.fault(key, v, `has "${key}" that is not a day of the year`, 'Give month and day, such as "04-15".');
    return undefined;
  }

  fault(key: string, value: unknown, message: string, mend: string): void {
    this.isSound = false;
    const place = `${this.#feature.place}, ${key}`;
    this.#found.error({ code: "feature-property", place, value, message: `The feature ${message}.`, mend });
  }
}

/** 02-29 is a day of the year; 02-30 is none. */
function isMonthDay(text: string): boolean {
  if (!/^\d\d-\d\d$/.test(text)) return false;
  const at = Date.parse(`2024-${text}T00:00:00Z`);
  return Number.isFinite(at) && new Date(at).toISOString().startsWith(`2024-${text}`);
}

/** Reports ids (or names) that several things share, with both places. */
export function reportTwins(
  found: Findings,
  items: readonly { readonly key: string; readonly place: string }[],
  what: string,
  code: string,
): void {
  const first = new Map<string, string>();
  for (const { key, place } of items) {
    const other = first.get(key);
    if (other === undefined) first.set(key, place);
    else
      found.error({
        code,
        place,
        value: key,
        message: `Two features have the same ${what} (the other is ${other}).`,
        mend: `Give each its own ${what}.`,
      });
  }
}
