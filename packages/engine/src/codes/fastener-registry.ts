import type { FastenerRules } from "./fastener-contract.ts";
import { ec5Fasteners } from "./ec5-2004/fasteners/index.ts";
import { usFasteners } from "./us-asd-2018/fasteners/index.ts";

/** Every code that has rules for nails and screws. */
export const fastenerRules: readonly FastenerRules[] = [usFasteners, ec5Fasteners];
