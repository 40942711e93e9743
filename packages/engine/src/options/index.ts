export { walkwayFacts, type WalkwayFacts } from "./kinds.ts";
export { optionLines, unsettledOptions, type OptionLine, type OptionWarning } from "./option-lines.ts";
export { onFoot, type OnFoot } from "./on-foot.ts";
export {
  deepPeat,
  footfalls,
  optionCalculations,
  optionFormulas,
  soleLength,
  soleWidth,
  stride,
} from "./formulas.ts";
