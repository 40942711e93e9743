import type { LumberGrade, LumberSize, StrengthClass, Tables, WoodDensity } from "./tables.ts";

/** What every part of the program but a design code needs of a graded wood, whichever table it stands in. */
export interface TimberRow {
  readonly species: string;
  readonly grade: string;
  readonly name: string;
  readonly density: WoodDensity;
}

export const densityOfGrade = (row: LumberGrade): WoodDensity => ({
  kind: "oven-dry-gravity",
  gravity: row.specific_gravity,
});

export const densityOfClass = (row: StrengthClass): WoodDensity => ({
  kind: "mean-density",
  kg_m3: row.rho_mean_kg_m3,
});

export const gradeRows = ({ grades }: Pick<Tables, "grades">): readonly TimberRow[] =>
  grades.map((row) => ({ ...named(row), density: densityOfGrade(row) }));

export const classRows = ({ strength_classes }: Pick<Tables, "strength_classes">): readonly TimberRow[] =>
  strength_classes.map((row) => ({ ...named(row), density: densityOfClass(row) }));

/** Every species and grade of the tables, those of all design codes. */
export const timberRows = (tables: Pick<Tables, "grades" | "strength_classes">): readonly TimberRow[] => [
  ...gradeRows(tables),
  ...classRows(tables),
];

const named = ({ species, grade, name }: Omit<TimberRow, "density">): Omit<TimberRow, "density"> => ({
  species,
  grade,
  name,
});

export const timberRow = (
  tables: Pick<Tables, "grades" | "strength_classes">,
  species: string,
  grade: string,
): TimberRow | undefined => timberRows(tables).find((t) => t.species === species && t.grade === grade);

export const isMetric = (size: LumberSize): boolean => size.nominal_thickness_in === null;

/** Whether both sizes are sold by one kind of yard: nominal inches, or millimetres. */
export const sameYard = (a: LumberSize, b: LumberSize): boolean => isMetric(a) === isMetric(b);
