import type { Findings } from "../problem/index.ts";
import type { PlanDocument } from "./read-document.ts";
import { plainName } from "./terrain-checks.ts";

/** All heights of a plan stand on one vertical datum: each clash is named with both of its datums. */
export function checkDatums(found: Findings, document: PlanDocument): void {
  const own = document.vertical_datum;
  const clash = (place: string, what: string, other: string): void => {
    if (other === own) return;
    const isSpelling = plainName(other) === plainName(own);
    found.error({
      code: "datum-clash",
      place,
      value: other,
      message: `${what} is on the vertical datum "${other}", the plan on "${own}".`,
      mend: isSpelling
        ? `If they are the same, write "${own}" in both places.`
        : `Bring the heights onto "${own}" with the difference between the two datums at the site, then write "${own}" here.`,
    });
  };
  clash("terrain.datum", "The terrain", document.terrain.datum);
  document.survey.benchmarks.forEach((mark, i) =>
    clash(`survey.benchmarks[${i}].datum`, `The mark "${mark.name}"`, mark.datum),
  );
  document.levels.forEach((level, i) =>
    clash(`levels[${i}].datum`, `The water level "${level.name}"`, level.datum),
  );
}
