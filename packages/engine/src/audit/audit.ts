import { holdAgainst } from "./fault.ts";
import { modulesOnPitch, partsApart, platformsOnJoints, supportsApart } from "./fit-rules.ts";
import {
  feetOfTheirKind,
  feetOnGround,
  feetOnLevelGround,
  feetOutsideUses,
  outsideKeepOff,
  outsideShutZones,
} from "./ground-rules.ts";
import {
  decksAddUp,
  gradesWithin,
  platformsLevel,
  supportsInRange,
  undersidesClear,
} from "./height-rules.ts";
import { branchesConnected, clearSpans, plotsReached } from "./line-rules.ts";
import { readLayout } from "./read-layout.ts";
import type { AuditInput, AuditReport, RuleReport } from "./types.ts";

const rules = [
  feetOfTheirKind,
  feetOnGround,
  feetOnLevelGround,
  feetOutsideUses,
  outsideShutZones,
  outsideKeepOff,
  partsApart,
  supportsApart,
  modulesOnPitch,
  platformsOnJoints,
  supportsInRange,
  decksAddUp,
  undersidesClear,
  gradesWithin,
  platformsLevel,
  branchesConnected,
  plotsReached,
  clearSpans,
] as const;

/**
 * Holds a written layout against the rules it must keep, sharing no code with the search that made it.
 *
 * Returns one report per rule, with the count of what was tested and every problem found; `ok` when there is none.
 * Exact: zone and keep-off tests; pitch, heights and grades to 1 mm and the rounding of the file (plane geometry).
 * Sampled: ground under a foot, every 5 cm and at each cell centre; 20 mm too low is let pass. Not held: strength,
 * uplift, cost, or whether a better layout exists. Never throws on a malformed layout: what cannot be read is a
 * problem of the rule "format".
 */
export function auditLayout(input: AuditInput): AuditReport {
  const { laid, report } = readLayout(input.layout);
  const reports: RuleReport[] = [report, layingDates(input), ...rules.map((rule) => rule(input, laid))];
  return { rules: reports, ok: reports.every((r) => r.problems.length === 0) };
}

const layingDates = ({ laying }: AuditInput): RuleReport =>
  holdAgainst("laying-dates", (fault, tested) => {
    tested();
    const days = [laying.from, laying.to].map((d) =>
      /^\d{4}-\d\d-\d\d$/.test(d) ? Date.parse(`${d}T00:00:00Z`) : NaN,
    );
    if (!(days[0]! <= days[1]!))
      fault(
        "laying",
        `${laying.from} to ${laying.to}`,
        "is not a span of days",
        "Give two ISO dates, the first not after the last.",
      );
  });
