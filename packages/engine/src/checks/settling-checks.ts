import { besideCheck } from "./settling-beside.ts";
import { chanceChecks } from "./settling-chance.ts";
import { sinkageChecks } from "./settling-sinkage.ts";
import { timeChecks } from "./settling-time.ts";
import { plotChecks } from "./plot-checks.ts";
import { ruleSettingOf } from "./rule-setting.ts";
import type { Setting } from "./setting.ts";
import type { PlanSoil } from "./soil.ts";
import type { CheckResult } from "./types.ts";

/** What soft ground does besides giving way at once: its spread, sinkage, tilt, time, the plots, and a foot beside it. */
export const softGroundChecks = (setting: Setting, soil: PlanSoil): CheckResult[] => [
  ...chanceChecks(setting, soil),
  ...sinkageChecks(ruleSettingOf(setting), soil),
  ...timeChecks(setting, soil),
  ...besideCheck(setting, soil),
  ...plotChecks(setting, soil),
];
