import type { Problem } from "../formula/index.ts";
import type { RuleReport } from "./types.ts";

export type Fault = (place: string, value: string, message: string, mend: string) => void;

/** Runs one rule: `test` reports each thing it tests by `tested()` and each fault it finds. */
export function holdAgainst(rule: string, test: (fault: Fault, tested: () => void) => void): RuleReport {
  const problems: Problem[] = [];
  let count = 0;
  test(
    (place, value, message, mend) =>
      problems.push({
        code: `audit.${rule}`,
        severity: "error",
        file: "layout.geojson",
        place,
        value,
        message,
        mend,
      }),
    () => count++,
  );
  return { rule, tested: count, problems };
}

/** Metres in words, to the millimetre. */
export const metresText = (v: number): string => `${v.toFixed(3)} m`;
