import { inputProblem, type Problem } from "../../formula/index.ts";
import type { Tables } from "../../materials/index.ts";
import type { Found, Member } from "../contract.ts";

const unique = (values: readonly string[]): string => [...new Set(values)].join(", ");

const unknown = (key: string, value: string, known: readonly string[]): Problem =>
  inputProblem(key, value, `"${value}" is not in the tables`, `Use one of: ${unique(known)}.`);

/** Finds species, grade and size in the tables; reports every unknown word with the list of known ones. */
export function findMember(tables: Tables, species: string, grade: string, size: string): Found<Member> {
  const ofSpecies = tables.grades.filter((g) => g.species === species);
  const row = ofSpecies.find((g) => g.grade === grade);
  const section = tables.sizes.find((s) => s.id === size);
  const problems: Problem[] = [];
  if (ofSpecies.length === 0)
    problems.push(
      unknown(
        "species",
        species,
        tables.grades.map((g) => g.species),
      ),
    );
  if (!row && (ofSpecies.length > 0 || !tables.grades.some((g) => g.grade === grade)))
    problems.push(
      unknown(
        "grade",
        grade,
        (ofSpecies.length > 0 ? ofSpecies : tables.grades).map((g) => g.grade),
      ),
    );
  if (!section)
    problems.push(
      unknown(
        "size",
        size,
        tables.sizes.map((s) => s.id),
      ),
    );
  else if (section.nominal_thickness_in > 4) problems.push(tooThick(size, tables));
  if (!row || !section || problems.length > 0) return { ok: false, problems };
  return { ok: true, value: { grade: row, size: section } };
}

const tooThick = (size: string, tables: Tables): Problem =>
  inputProblem(
    "size",
    size,
    `${size} is a timber of 5 in or more: its strength stands in another table (NDS Supplement Table 4D) that is not loaded`,
    `Use one of: ${unique(tables.sizes.filter((s) => s.nominal_thickness_in <= 4).map((s) => s.id))}.`,
  );
