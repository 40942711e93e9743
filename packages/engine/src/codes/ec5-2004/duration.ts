import { defineConstant, type Constant } from "../../formula/index.ts";
import type { LoadDuration } from "../contract.ts";
import { ec5 } from "./sources.ts";

export type ServiceClass = 1 | 2 | 3;
export type DurationClass = "permanent" | "long-term" | "medium-term" | "short-term" | "instantaneous";

export const durationClasses: readonly DurationClass[] = [
  "permanent",
  "long-term",
  "medium-term",
  "short-term",
  "instantaneous",
];

/** Decision record 0008: where two classes could be meant, the longer and so the weaker one. */
export const durationClass: Readonly<Record<LoadDuration, DurationClass>> = {
  permanent: "permanent",
  "ten-years": "medium-term",
  "two-months": "medium-term",
  "seven-days": "short-term",
  "ten-minutes": "short-term",
  impact: "instantaneous",
};

/** Wet timber over a marsh is service class 3; dry timber is taken as sheltered outdoors, class 2. */
export const serviceClass = (wet: boolean): ServiceClass => (wet ? 3 : 2);

type Row = Readonly<Record<DurationClass, Constant<"1">>>;

function row(service: ServiceClass, values: readonly [number, number, number, number, number]): Row {
  const constants = durationClasses.map((duration, i) => [
    duration,
    defineConstant(
      `ec5-2004.kmod.${service}.${duration}`,
      `Moisture and duration factor, service class ${service}, ${duration}`,
      "kmod",
      values[i]!,
      "1",
      ec5("Table 3.1, solid timber", "seen"),
    ),
  ]);
  return Object.fromEntries(constants) as Row;
}

const dry = [0.6, 0.7, 0.8, 0.9, 1.1] as const;

/** kmod of solid timber by service class and duration. */
export const kmod: Readonly<Record<ServiceClass, Row>> = {
  1: row(1, dry),
  2: row(2, dry),
  3: row(3, [0.5, 0.55, 0.65, 0.7, 0.9]),
};

const creepOf = (service: ServiceClass, value: number): Constant<"1"> =>
  defineConstant(
    `ec5-2004.kdef.${service}`,
    `Creep of solid timber, service class ${service}`,
    "kdef",
    value,
    "1",
    ec5("Table 3.2, solid timber", "seen"),
  );

/** kdef of solid timber by service class. */
export const kdef: Readonly<Record<ServiceClass, Constant<"1">>> = {
  1: creepOf(1, 0.6),
  2: creepOf(2, 0.8),
  3: creepOf(3, 2),
};

export const durationConstants: readonly Constant<"1">[] = [
  ...Object.values(kmod).flatMap((r) => Object.values(r)),
  ...Object.values(kdef),
];
