import type { Json } from "@causey/engine/formula";
import { DomainError } from "@causey/engine/units";
import type { SqlValue } from "sql.js";
import type { VectorFeature } from "../layer-form/index.ts";

export interface TableColumn {
  readonly key: string;
  readonly name: string;
  readonly type: "INTEGER" | "REAL" | "TEXT" | "BOOLEAN";
}

/** Columns for the properties of some features; names that SQLite takes for one (it ignores capitals) get a number. */
export function columnsFor(features: readonly VectorFeature[]): readonly TableColumn[] {
  const keys = [...new Set(features.flatMap((f) => Object.keys(f.properties)))];
  const taken = new Set<string>();
  return keys.map((key) => {
    const name = freeName(key, taken);
    taken.add(name.toLowerCase());
    return { key, name, type: typeOf(features.map((f) => f.properties[key] ?? null)) };
  });
}

/** A name that is not yet among the lower-case names taken. */
export function freeName(wanted: string, taken: ReadonlySet<string>): string {
  let name = wanted;
  for (let i = 2; taken.has(name.toLowerCase()); i++) name = `${wanted}_${i}`;
  return name;
}

function typeOf(values: readonly Json[]): TableColumn["type"] {
  const given = values.filter((v) => v !== null);
  if (given.length === 0) return "TEXT";
  if (given.every((v) => typeof v === "boolean")) return "BOOLEAN";
  if (!given.every((v) => typeof v === "number")) return "TEXT";
  return given.every((v) => Number.isSafeInteger(v)) ? "INTEGER" : "REAL";
}

/** A property as SQLite stores it; lists and objects become JSON text. Throws `DomainError` for NaN. */
export function sqlValue(value: Json | undefined, type: TableColumn["type"]): SqlValue {
  if (value === null || value === undefined) return null;
  if (typeof value === "number" && !Number.isFinite(value))
    throw new DomainError("not-a-finite-number", { value: String(value) });
  if (type !== "TEXT") return Number(value);
  return typeof value === "string" ? value : JSON.stringify(value);
}
