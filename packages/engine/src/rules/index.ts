export type * from "./types.ts";
export type { Rule, RuleDirection, RuleProfile, RuleTopic } from "./profile.ts";
export { doClash, ruleClashes, ruleWords, showRuleValue, type RuleClash } from "./clash.ts";
export {
  resolveRules,
  ruleSource,
  type ResolvedRule,
  type ResolvedRules,
  type RuleOrigin,
} from "./resolve.ts";
export {
  gradeRuns,
  layoutGrades,
  steeperLength,
  type GradeReport,
  type GradeRun,
  type GradeStep,
} from "./grades.ts";
export { meetsRule } from "./meets.ts";
export {
  bankReach,
  bankSetback,
  boardGapSlack,
  cartWidth,
  clearSquare,
  fallHeight,
  fallReach,
  gradeFormula,
  heightForWidth,
  leastCurb,
  openingSize,
  ruleFormulas,
  sidewaysShare,
  tippingHold,
  tippingMoment,
  turningCircle,
  wheelDrop,
} from "./formulas.ts";
