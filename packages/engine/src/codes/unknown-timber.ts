import { inputProblem, type Problem } from "../formula/index.ts";

interface Row {
  readonly species: string;
  readonly grade: string;
}

/** Rows that a code reads, and those of the tables that only other codes read. */
export interface TimberTables {
  /** Id of the code. */
  readonly id: string;
  readonly rows: readonly Row[];
  readonly others: readonly Row[];
}

const unique = (values: readonly string[]): string => [...new Set(values)].join(", ");

export const unknownWord = (key: string, value: string, known: readonly string[]): Problem =>
  inputProblem(key, value, `"${value}" is not in the tables`, `Use one of: ${unique(known)}.`);

const ofAnotherCode = (key: string, value: string, id: string, known: readonly string[]): Problem =>
  inputProblem(
    key,
    value,
    `"${value}" is graded for another design code than "${id}": its values mean something else and are not converted`,
    `Use one of: ${unique(known)}; or the design code that the wood is graded for.`,
  );

/** What is wrong with species and grade under a code; a word of another code's table is named as such. */
export function unknownTimber({ id, rows, others }: TimberTables, species: string, grade: string): Problem[] {
  const ofSpecies = rows.filter((r) => r.species === species);
  const problem = (key: keyof Row, value: string, known: readonly Row[]): Problem => {
    const words = known.map((r) => r[key]);
    return others.some((r) => r[key] === value) && !rows.some((r) => r[key] === value)
      ? ofAnotherCode(key, value, id, words)
      : unknownWord(key, value, words);
  };
  const isKnown = ofSpecies.some((r) => r.grade === grade);
  const isGradeOdd = ofSpecies.length > 0 || !rows.some((r) => r.grade === grade);
  return [
    ...(ofSpecies.length === 0 ? [problem("species", species, rows)] : []),
    ...(!isKnown && isGradeOdd ? [problem("grade", grade, ofSpecies.length > 0 ? ofSpecies : rows)] : []),
  ];
}
