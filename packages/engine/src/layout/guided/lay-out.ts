import type { Job } from "../../formula/index.ts";
import { SearchMemory } from "../search-memory.ts";
import { searchNetwork } from "../search.ts";
import type { SearchInput } from "../search-input.ts";
import type { Layout } from "../types.ts";
import { refitFrom } from "./as-laid.ts";
import { fitDrawnLines } from "./fit-lines.ts";
import { keepPassing } from "./passing.ts";

/**
 * The layout a plan asks for: parts fitted along its drawn lines, or the least-cost walkway where none is drawn; then
 * platforms for passing; then what already lies in the field, and the rest fitted to it. Yields progress; the same
 * input gives the same layout, whatever `memory` holds.
 *
 * memory  what earlier searches of the same ground found out; drawn lines need none
 */
export function* searchLayout(input: SearchInput, memory = new SearchMemory(0)): Job<Layout> {
  const { lines, as_laid } = input.choice;
  const planned =
    lines.length > 0
      ? yield* fitDrawnLines(input)
      : yield* keepPassing(yield* searchNetwork(input, memory), input);
  return as_laid.length > 0 ? yield* refitFrom(planned, as_laid, input) : planned;
}
