import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Plan, SectionEdit } from "@causey/engine/plan";
import {
  readCheckShots,
  readProbeStations,
  readShearReadings,
  type DateOrder,
  type DecimalSign,
  type LeftOut,
  type PointUnit,
} from "@causey/io/points";
import { importKinds, type Columns, type ImportKind } from "./import-kinds.ts";

/** How the user says that a file is to be read. */
export interface ImportChoice {
  readonly columns: Columns;
  readonly unit: PointUnit;
  readonly decimal: DecimalSign;
  readonly date_order: DateOrder;
  readonly strength_unit: "kpa" | "psf";
  /** Multiplies vane strengths; null = not given yet. */
  readonly correction: number | null;
  readonly source: string;
  /** The rows take the place of all that are there; otherwise they are added, and equal names are replaced. */
  readonly replace: boolean;
}

export interface ImportPreview {
  readonly count: number;
  readonly left_out: readonly LeftOut[];
  readonly problems: readonly Problem[];
  /** The change of the plan; null while something stands against it. */
  readonly edit: SectionEdit | null;
}

export const startChoice: Omit<ImportChoice, "columns"> = {
  unit: "m",
  decimal: "point",
  date_order: "ymd",
  strength_unit: "kpa",
  correction: null,
  source: "",
  replace: false,
};

/** What is still to be chosen before the file can be read, in words; null when nothing is. */
export function stillMissing(kind: ImportKind, { columns, correction, source }: ImportChoice): string | null {
  const lacking = importKinds[kind].columns.filter((c) => c.required && !columns[c.key]).map((c) => c.label);
  if (lacking.length > 0) return `Choose the columns of: ${lacking.join(", ")}.`;
  if (kind === "shear" && correction === null)
    return "Give the correction of the strengths: 1 where the file is corrected already.";
  if (kind === "shear" && source.trim() === "") return "Say who took the readings, with what, and when.";
  return null;
}

/** Reads the file as chosen and says what would come of it. Nothing is thrown: problems are part of the answer. */
export function previewImport(
  kind: ImportKind,
  file: string,
  bytes: Uint8Array,
  choice: ImportChoice,
  plan: Plan,
): ImportPreview {
  try {
    return readers[kind](file, bytes, choice, plan);
  } catch (error) {
    if (error instanceof ProblemError)
      return { count: 0, left_out: [], problems: error.problems, edit: null };
    throw error;
  }
}

type Reader = (file: string, bytes: Uint8Array, choice: ImportChoice, plan: Plan) => ImportPreview;

/** Heights on the plan's datum of its marks and water levels [m]. */
const knownHeights = ({ survey, levels, vertical_datum }: Plan): readonly number[] =>
  [...survey.benchmarks, ...levels].filter((k) => k.datum === vertical_datum).map((k) => k.z_m);

const needed = (columns: Columns, key: string): string => columns[key]!;
const wanted = (columns: Columns, key: string): string | null => columns[key] ?? null;

const readers: Readonly<Record<ImportKind, Reader>> = {
  stations: (file, bytes, { columns: c, unit, decimal, date_order, replace }, plan) => {
    const { survey } = plan;
    const columns = {
      id: needed(c, "id"),
      x: needed(c, "x"),
      y: needed(c, "y"),
      ground: needed(c, "ground"),
      probe: wanted(c, "probe"),
      water: wanted(c, "water"),
      date: wanted(c, "date"),
    };
    const read = readProbeStations(file, bytes, {
      columns,
      unit,
      decimal,
      date_order,
      known_heights_m: knownHeights(plan),
    });
    const stations = replace ? read.stations : merged(survey.stations, read.stations);
    return previewOf(read.stations.length, read, {
      type: "set-section",
      section: "survey",
      value: { ...survey, stations },
    });
  },
  "check-shots": (file, bytes, { columns: c, unit, decimal, date_order, replace }, plan) => {
    const { survey } = plan;
    const columns = {
      id: wanted(c, "id"),
      x: needed(c, "x"),
      y: needed(c, "y"),
      z: needed(c, "z"),
      code: null,
      accuracy: wanted(c, "accuracy"),
      date: wanted(c, "date"),
    };
    const known_heights_m = knownHeights(plan);
    const read = readCheckShots(file, bytes, { columns, unit, decimal, date_order, known_heights_m });
    const check_shots = replace ? read.shots : merged(survey.check_shots, read.shots);
    return previewOf(read.shots.length, read, {
      type: "set-section",
      section: "survey",
      value: { ...survey, check_shots },
    });
  },
  shear: (file, bytes, choice, { ground }) => {
    const { columns: c, unit, decimal, strength_unit, source, replace } = choice;
    const columns = {
      id: wanted(c, "id"),
      x: needed(c, "x"),
      y: needed(c, "y"),
      depth: needed(c, "depth"),
      peak: needed(c, "peak"),
      remoulded: wanted(c, "remoulded"),
      vane: wanted(c, "vane"),
    };
    const correction = choice.correction ?? Number.NaN;
    const options = { columns, unit, strength_unit, decimal, correction, source: source.trim() };
    const read = readShearReadings(file, bytes, options);
    const readings = replace ? read.readings : [...ground.readings, ...read.readings];
    return previewOf(read.readings.length, read, {
      type: "set-section",
      section: "ground",
      value: { ...ground, readings },
    });
  },
};

const previewOf = (
  count: number,
  { left_out, warnings }: { readonly left_out: readonly LeftOut[]; readonly warnings: readonly Problem[] },
  edit: SectionEdit,
): ImportPreview => ({ count, left_out, problems: warnings, edit: count === 0 ? null : edit });

/** The rows that are there, those of equal name replaced in their place, and the new ones behind them. */
function merged<T extends { readonly id: string }>(there: readonly T[], come: readonly T[]): readonly T[] {
  const fresh = new Map(come.map((row) => [row.id, row]));
  const known = new Set(there.map((row) => row.id));
  return [...there.map((row) => fresh.get(row.id) ?? row), ...come.filter((row) => !known.has(row.id))];
}
