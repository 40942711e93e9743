import { densityOfClass, isMetric, type StrengthClass, type Tables } from "../../materials/index.ts";
import { DomainError } from "../../units/index.ts";
import type { Found, Member } from "../contract.ts";
import { unknownTimber, unknownWord } from "../unknown-timber.ts";

/** A member whose row is a strength class. */
export interface ClassedMember extends Member {
  readonly grade: StrengthClass;
}

/** Takes a member for one of this code; throws `DomainError` when another code found it. */
export function classedMember(member: Member): ClassedMember {
  if (!("fm_k_mpa" in member.grade))
    throw new DomainError("member-of-another-code", { code: "ec5-2004", grade: member.grade.id });
  return member as ClassedMember;
}

/** Finds class and size; reports every unknown word with the known ones, metric sizes first. Any section will do. */
export function findMember(tables: Tables, species: string, grade: string, size: string): Found<Member> {
  const row = tables.strength_classes.find((g) => g.species === species && g.grade === grade);
  const section = tables.sizes.find((s) => s.id === size);
  const sizes = [...tables.sizes.filter(isMetric), ...tables.sizes.filter((s) => !isMetric(s))];
  const problems = [
    ...unknownTimber(
      { id: "ec5-2004", rows: tables.strength_classes, others: tables.grades },
      species,
      grade,
    ),
    ...(section
      ? []
      : [
          unknownWord(
            "size",
            size,
            sizes.map((s) => s.id),
          ),
        ]),
  ];
  if (!row || !section || problems.length > 0) return { ok: false, problems };
  return { ok: true, value: { grade: row, size: section, density: densityOfClass(row), caution: null } };
}
