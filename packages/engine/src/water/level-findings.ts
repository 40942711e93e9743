import type { LevelRole, WaterLevel } from "./types.ts";

/** Something odd about a level: shown beside it, never mended in silence. */
export interface LevelFinding {
  readonly level: string;
  readonly message: string;
}

/** From low to high: a level of an earlier role may not lie above one of a later role. */
const ORDER: readonly LevelRole[] = [
  "lowest-recorded",
  "lowest-predicted",
  "mllw",
  "mlw",
  "msl",
  "mhw",
  "mhhw",
  "highest-predicted",
];
const BASES: Partial<Record<LevelRole, WaterLevel["basis"]>> = {
  "highest-predicted": "predicted",
  "lowest-predicted": "predicted",
  "highest-recorded": "recorded",
  "lowest-recorded": "recorded",
};

/** Holds named levels against each other: order, years, and predicted against recorded extremes. */
export function levelFindings(levels: readonly WaterLevel[]): readonly LevelFinding[] {
  return [...levels.flatMap(ownFindings), ...orderFindings(levels), ...extremeFindings(levels)];
}

function ownFindings(level: WaterLevel): LevelFinding[] {
  const wanted = BASES[level.role];
  return [
    ...(level.epoch.trim() === ""
      ? [
          {
            level: level.id,
            message: `"${level.name}" does not say for which years it holds: levels have shifted by decimetres over the decades.`,
          },
        ]
      : []),
    ...(wanted !== undefined && level.basis !== wanted
      ? [
          {
            level: level.id,
            message: `"${level.name}" is said to be the ${level.role.replace("-", " ")} level, but its basis is "${level.basis}": predicted and recorded levels are kept apart.`,
          },
        ]
      : []),
  ];
}

function orderFindings(levels: readonly WaterLevel[]): LevelFinding[] {
  const ranked = ORDER.flatMap((role) => levels.filter((l) => l.role === role));
  return ranked.slice(1).flatMap((level, i) => {
    const below = ranked[i]!;
    return level.z_m >= below.z_m || level.role === below.role
      ? []
      : [
          {
            level: level.id,
            message: `"${level.name}" lies below "${below.name}": one of the two is wrong, or on another datum.`,
          },
        ];
  });
}

/** Wind and rain lift water above every prediction: a flood that is a predicted tide is no flood. */
function extremeFindings(levels: readonly WaterLevel[]): LevelFinding[] {
  const predicted = levels.find((l) => l.role === "highest-predicted");
  const recorded = levels.find((l) => l.role === "highest-recorded");
  if (!predicted || recorded) return [];
  return [
    {
      level: predicted.id,
      message: `"${predicted.name}" is a prediction without wind; no highest recorded level is given beside it.`,
    },
  ];
}
