import type { Series } from "./series.ts";
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
/** Roles that stand beside the chain above: each may not lie below any of these. */
const ABOVE: Partial<Record<LevelRole, readonly LevelRole[]>> = {
  mhwn: ["mllw", "mlw", "msl"],
  mhws: ["mllw", "mlw", "msl", "mhwn", "mhw"],
  "highest-recorded": ["mllw", "mlw", "msl", "mhw", "mhws", "mhhw"],
};
const BASES: Partial<Record<LevelRole, WaterLevel["basis"]>> = {
  "highest-predicted": "predicted",
  "lowest-predicted": "predicted",
  "highest-recorded": "recorded",
  "lowest-recorded": "recorded",
};
/** An extreme may differ from the record's by rounding [m]. */
const ROUNDING_M = 0.005;

/**
 * Holds named levels against each other, against the datum of the plan and against the record: datum, years, order,
 * predicted against recorded extremes, and extremes that the record itself goes beyond.
 *
 * datum   the plan's vertical datum; null = not known here, and then not looked at
 * series  the plan's record or table, null when there is none; it is held only against levels of its own basis
 */
export function levelFindings(
  levels: readonly WaterLevel[],
  series: Series | null = null,
  datum: string | null = null,
): readonly LevelFinding[] {
  return [
    ...levels.flatMap((level) => [...datumFindings(level, datum), ...ownFindings(level)]),
    ...orderFindings(levels),
    ...extremeFindings(levels),
    ...(series === null ? [] : levels.flatMap((level) => recordFindings(level, series))),
  ];
}

function datumFindings(level: WaterLevel, datum: string | null): LevelFinding[] {
  if (datum === null || level.datum === datum) return [];
  return [
    {
      level: level.id,
      message: `"${level.name}" is on "${level.datum}", the plan on "${datum}": it cannot be held against the ground.`,
    },
  ];
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

/** Each level against the highest of those that must not lie above it. */
function orderFindings(levels: readonly WaterLevel[]): LevelFinding[] {
  return levels.flatMap((level) => {
    const rank = ORDER.indexOf(level.role);
    const lower = ABOVE[level.role] ?? (rank > 0 ? ORDER.slice(0, rank) : []);
    const highest = levels
      .filter((l) => lower.includes(l.role))
      .reduce<WaterLevel | null>((a, l) => (a === null || l.z_m > a.z_m ? l : a), null);
    if (highest === null || level.z_m >= highest.z_m) return [];
    return [
      {
        level: level.id,
        message: `"${level.name}" lies below "${highest.name}": one of the two is wrong, or on another datum.`,
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

/** An extreme that the plan's own record goes beyond: wrong, older than the record, or on another datum. */
function recordFindings(level: WaterLevel, { basis, z_m }: Series): LevelFinding[] {
  const [end, of] = level.role.split("-");
  if (of !== basis || z_m.length === 0) return [];
  const beyond =
    end === "highest"
      ? z_m.reduce((a, b) => Math.max(a, b)) > level.z_m + ROUNDING_M
      : z_m.reduce((a, b) => Math.min(a, b)) < level.z_m - ROUNDING_M;
  if (!beyond) return [];
  return [
    {
      level: level.id,
      message: `The plan's own ${basis === "recorded" ? "record" : "tide table"} goes ${end === "highest" ? "above" : "below"} "${level.name}": the level is out of date, or one of the two is on another datum.`,
    },
  ];
}
