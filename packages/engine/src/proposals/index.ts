export { familiesFor } from "./families.ts";
export { propose } from "./propose.ts";
export type { Family, Proposal, Step } from "./types.ts";
