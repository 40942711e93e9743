import { hashJson } from "@causey/engine/formula";
import type { Tables } from "@causey/engine/materials";
import { sources } from "../sources/index.ts";
import { fasteners, labour, lumberSizes, tableFourA, tableFourB } from "../timber/index.ts";

const content = {
  sources,
  grades: [...tableFourA, ...tableFourB],
  sizes: lumberSizes,
  fasteners,
  labour,
} as const satisfies Omit<Tables, "version">;

/** Every table the engine reads. `version` changes with any value, source or status. */
export const tables: Tables = { ...content, version: hashJson(content) };
