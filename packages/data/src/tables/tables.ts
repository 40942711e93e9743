import { hashJson } from "@causey/engine/formula";
import type { Tables } from "@causey/engine/materials";
import { barGratings, meshes, plywood, wires } from "../deck-materials/index.ts";
import { fasteners, holes } from "../fasteners/index.ts";
import { dragCoefficients } from "../flood/index.ts";
import { compressibleSoils, muskegs, terrains } from "../ground/index.ts";
import { loadRules } from "../loads/index.ts";
import { ruleProfiles, ruleSources } from "../rules/index.ts";
import { sources } from "../sources/index.ts";
import {
  en338,
  labour,
  lumberSizes,
  preservatives,
  tableFourA,
  tableFourB,
  usedTimber,
} from "../timber/index.ts";

const content = {
  sources: { ...sources, ...ruleSources },
  grades: [...tableFourA, ...tableFourB],
  strength_classes: en338,
  sizes: lumberSizes,
  fasteners,
  holes,
  load_rules: loadRules,
  used_timber: usedTimber,
  wires,
  meshes,
  bar_gratings: barGratings,
  plywood,
  preservatives,
  labour,
  rule_profiles: ruleProfiles,
  drag_coefficients: dragCoefficients,
  ground: { terrains, muskegs, compressible: compressibleSoils },
} as const satisfies Omit<Tables, "version">;

/** Every table the engine reads. `version` changes with any value, source or status. */
export const tables: Tables = { ...content, version: hashJson(content) };
