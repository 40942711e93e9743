import type { Site } from "../site/index.ts";
import type { LayoutFacts, SearchCosts } from "./facts.ts";
import type { LayoutChoice } from "./types.ts";

/** Everything the layout search reads. */
export interface SearchInput {
  readonly site: Site;
  readonly choice: LayoutChoice;
  readonly laying: { readonly from: string; readonly to: string };
  readonly facts: LayoutFacts;
  readonly costs: SearchCosts;
}
