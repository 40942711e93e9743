import type { Problem } from "../formula/index.ts";

/** What is wrong with heights on another vertical datum than the plan's: both are named. Null for the plan's own. */
export function datumProblem(
  what: string,
  file: string,
  place: string,
  datum: string,
  planDatum: string,
): Problem | null {
  if (datum === planDatum) return null;
  return {
    code: "datum-clash",
    severity: "error",
    file,
    place,
    value: datum,
    message: `${what} is on the vertical datum "${datum}", the plan on "${planDatum}", and no difference between the two is stated.`,
    mend: `Bring its heights onto "${planDatum}" with the difference at the site, then write "${planDatum}" here.`,
  };
}
