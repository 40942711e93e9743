import type { Given, PlaceMapping, ZoneMapping } from "@causey/io/layers";
import { WATER_KINDS, ZONE_USES } from "@causey/io/vector";
import type { WaterKind, ZoneUse } from "@causey/engine/site";
import { UsageError, type Values } from "../shell/index.ts";

/** Options that say what the features are. Each stands for one value for all; with "-field" it names a field. */
export const FEATURE_OPTIONS = [
  "use",
  "source",
  "sensitivity",
  "from",
  "to",
  "buffer",
  "owner",
  "contact",
  "water",
  "keep-off",
  "reach",
] as const;

type FeatureOption = (typeof FEATURE_OPTIONS)[number];

/** What the options say of areas. Throws `UsageError` for what is lacking or is no number. */
export function zoneMapping(values: Values, file: string): ZoneMapping {
  const use = given(values, "use", useOf);
  if (use === undefined)
    throw new UsageError(`Say what the areas are with --use or --use-field. Uses: ${ZONE_USES.join(", ")}.`);
  return {
    ...named(values),
    use,
    source: given(values, "source", textOf) ?? `Brought in from ${file}`,
    hidden: values["hidden"] === true,
    ...optional("sensitivity", given(values, "sensitivity", numberOf)),
    ...optional("from", given(values, "from", textOf)),
    ...optional("to", given(values, "to", textOf)),
    ...optional("buffer_m", given(values, "buffer", numberOf)),
    ...optional("owner", given(values, "owner", textOf)),
    ...optional("water", given(values, "water", waterOf)),
    ...optional("contact", given(values, "contact", textOf)),
  };
}

export function placeMapping(values: Values, kind: "start" | "plot"): PlaceMapping {
  return {
    ...named(values),
    kind,
    ...optional("keep_off_m", given(values, "keep-off", numberOf)),
    ...optional("reach_m", given(values, "reach", numberOf)),
  };
}

const named = (values: Values): { readonly idField: string | null; readonly nameField: string } => ({
  idField: typeof values["id-field"] === "string" ? values["id-field"] : null,
  nameField: typeof values["name-field"] === "string" ? values["name-field"] : "name",
});

const optional = <K extends string, V>(key: K, value: V | undefined): { readonly [P in K]?: V } =>
  value === undefined ? {} : ({ [key]: value } as { readonly [P in K]?: V });

function given<T extends string | number>(
  values: Values,
  option: FeatureOption,
  read: (option: FeatureOption, text: string) => T,
): Given<T> | undefined {
  const [value, field] = [values[option], values[`${option}-field`]];
  if (typeof value === "string" && typeof field === "string")
    throw new UsageError(`Give --${option} or --${option}-field, not both.`);
  if (typeof field === "string") return { field };
  return typeof value === "string" ? read(option, value) : undefined;
}

const textOf = (_: FeatureOption, text: string): string => text;

function numberOf(option: FeatureOption, text: string): number {
  const value = Number(text);
  if (text.trim() === "" || !Number.isFinite(value))
    throw new UsageError(`--${option} ${text}: not a number. Metres and shares are written 3.5.`);
  return value;
}

function useOf(_: FeatureOption, text: string): ZoneUse {
  const use = ZONE_USES.find((u) => u === text);
  if (!use) throw new UsageError(`--use ${text}: no such use. There are ${ZONE_USES.join(", ")}.`);
  return use;
}

function waterOf(_: FeatureOption, text: string): WaterKind {
  const kind = WATER_KINDS.find((w) => w === text);
  if (!kind) throw new UsageError(`--water ${text}: no such water. There are ${WATER_KINDS.join(", ")}.`);
  return kind;
}
