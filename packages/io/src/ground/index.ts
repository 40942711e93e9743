export { groundFile, readGround, type MeasuredGround } from "./read-ground.ts";
export {
  siteGround,
  uncorrectedGround,
  type GroundPlan,
  type SiteGround,
  type UnzonedPlan,
} from "./site-ground.ts";
export { groundInputs } from "./ground-inputs.ts";
