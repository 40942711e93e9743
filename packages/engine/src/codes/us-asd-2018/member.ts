import { inputProblem, type Problem } from "../../formula/index.ts";
import {
  densityOfGrade,
  isMetric,
  type LumberGrade,
  type LumberSize,
  type Tables,
} from "../../materials/index.ts";
import { DomainError } from "../../units/index.ts";
import type { Found, Member } from "../contract.ts";
import { unknownTimber, unknownWord } from "../unknown-timber.ts";

/** A member whose row is one of Tables 4A and 4B, in a size with nominal inches. */
export interface GradedMember extends Member {
  readonly grade: LumberGrade;
}

/** Takes a member for one of this code; throws `DomainError` when another code found it. */
export function gradedMember(member: Member): GradedMember {
  if (!("fb_psi" in member.grade))
    throw new DomainError("member-of-another-code", { code: "us-asd-2018", grade: member.grade.id });
  return member as GradedMember;
}

/** Nominal thickness and width [in]. Throws `DomainError` for a metric size, which `findMember` refuses. */
export function nominalOf({ id, nominal_thickness_in, nominal_width_in }: LumberSize) {
  if (nominal_thickness_in === null || nominal_width_in === null)
    throw new DomainError("size-without-nominal-inches", { size: id });
  return { thick: nominal_thickness_in, wide: nominal_width_in };
}

/** Finds species, grade and size in the tables; reports every unknown word with the list of known ones. */
export function findMember(tables: Tables, species: string, grade: string, size: string): Found<Member> {
  const row = tables.grades.find((g) => g.species === species && g.grade === grade);
  const section = tables.sizes.find((s) => s.id === size);
  const problems: Problem[] = [
    ...unknownTimber(
      { id: "us-asd-2018", rows: tables.grades, others: tables.strength_classes },
      species,
      grade,
    ),
    ...sizeProblems(section, size, tables),
  ];
  if (!row || !section || problems.length > 0) return { ok: false, problems };
  const member = { grade: row, size: section, density: densityOfGrade(row) };
  return { ok: true, value: { ...member, caution: nominalOf(section).thick < 2 ? THIN : null } };
}

const THIN =
  "Boards under 2 in nominal stand outside the strength tables: the grade's values are used without gain of size or lay.";

function sizeProblems(section: LumberSize | undefined, size: string, tables: Tables): Problem[] {
  const known = tables.sizes.filter((s) => !isMetric(s));
  if (!section)
    return [
      unknownWord(
        "size",
        size,
        known.map((s) => s.id),
      ),
    ];
  if (isMetric(section)) return [withoutNominal(size, known)];
  return nominalOf(section).thick > 4 ? [tooThick(size, known)] : [];
}

const fitting = (known: readonly LumberSize[]): string =>
  known
    .filter((s) => nominalOf(s).thick <= 4)
    .map((s) => s.id)
    .join(", ");

const withoutNominal = (size: string, known: readonly LumberSize[]): Problem =>
  inputProblem(
    "size",
    size,
    `${size} is a metric size: the factors of NDS Tables 4A and 4B go by nominal inches`,
    `Use one of: ${fitting(known)}; or the design code "ec5-2004" with a strength class.`,
  );

const tooThick = (size: string, known: readonly LumberSize[]): Problem =>
  inputProblem(
    "size",
    size,
    `${size} is a timber of 5 in or more: its strength stands in another table (NDS Supplement Table 4D) that is not loaded`,
    `Use one of: ${fitting(known)}.`,
  );
