import { defineConstant, type Trace } from "../../formula/index.ts";
import type { Creep } from "../contract.ts";
import { noFactor } from "./service-factors.ts";
import { nds } from "./sources.ts";

const creepFactor = (name: string, what: string, value: number) =>
  defineConstant(
    `us-asd-2018.creep.${name}`,
    `Deflection under lasting load over that at once, ${what}`,
    "Kcr",
    value,
    "1",
    nds("3.5.2", "memory"),
  );

/** Kcr of the lasting load. */
export const creepFactors = {
  dry: creepFactor("dry", "seasoned lumber, dry", 1.5),
  wet: creepFactor("wet", "unseasoned or wet lumber", 2),
} as const;

/** The dead load lasts; people and carts do not. */
export const creep = (wet: boolean, trace?: Trace): Creep => ({
  dead: creepFactors[wet ? "wet" : "dry"]({}, trace),
  live: noFactor({}),
});
