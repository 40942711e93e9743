import type { LevelBasis, LevelRole } from "@causey/engine/water";

export const roleWords: Readonly<Record<LevelRole, string>> = {
  mhhw: "mean higher high water",
  mhw: "mean high water",
  mhws: "mean high water springs",
  mhwn: "mean high water neaps",
  msl: "mean sea level",
  mlw: "mean low water",
  mllw: "mean lower low water",
  "highest-predicted": "highest predicted",
  "lowest-predicted": "lowest predicted",
  "highest-recorded": "highest recorded",
  "lowest-recorded": "lowest recorded",
  "high-tide-line": "high tide line",
  "ordinary-high-water": "ordinary high water mark",
  groundwater: "groundwater",
  flood: "flood to be held",
  other: "other",
};

export const basisWords: Readonly<Record<LevelBasis, string>> = {
  mean: "a mean over years",
  predicted: "predicted, no wind",
  recorded: "recorded",
  assumed: "assumed",
};

export const choicesOf = <T extends string>(words: Readonly<Record<T, string>>) =>
  (Object.keys(words) as T[]).map((value) => ({ value, words: words[value] }));
