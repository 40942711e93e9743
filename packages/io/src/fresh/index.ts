export { freshPlanFiles, type FreshWishes } from "./fresh-plan-files.ts";
export { siteOfStart, siteOfTerrain, siteToCome, type FreshSite, type SiteTold } from "./fresh-site.ts";
export { freshSystem } from "./fresh-system.ts";
export { PLACEHOLDER_START, withoutPlaceholder } from "./placeholder-start.ts";
export { lookAtTerrain, type TerrainLook } from "./look-at-terrain.ts";
