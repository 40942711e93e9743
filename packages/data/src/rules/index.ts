import type { RuleProfile } from "@causey/engine/rules";
import { adaRoute } from "./accessible-route.ts";
import { abaTrail } from "./accessible.ts";
import { buildingGuard, coastalPier, lightUnderDeck, trailStructures } from "./american.ts";
import { nzStructures, scottishGrant, ukPaths } from "./elsewhere.ts";
import { staffAccess, workplace } from "./staff.ts";

export { ruleSources } from "./sources.ts";

/** Every rule profile; the first is the default. */
export const ruleProfiles: readonly RuleProfile[] = [
  staffAccess,
  abaTrail,
  adaRoute,
  trailStructures,
  workplace,
  buildingGuard,
  coastalPier,
  lightUnderDeck,
  ukPaths,
  scottishGrant,
  nzStructures,
];
