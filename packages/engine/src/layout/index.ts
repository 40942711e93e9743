export type * from "./types.ts";
export { Settle, type SearchSpace } from "./settle.ts";
export { readGridMap, type GridMap } from "./grid-map.ts";
export { gridPath, gridPathLengths } from "./grid-path.ts";
export { footArea, footReach, type LayoutFacts, type SearchCosts } from "./facts.ts";
export { searchLayout, MOST_JOINED_EXACTLY } from "./search.ts";
export type { SearchInput } from "./search-input.ts";
export { evaluateLayout, type EvaluationInput } from "./evaluate.ts";
export { isWater } from "./fields.ts";
