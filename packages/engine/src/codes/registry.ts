import { inputProblem, type Source } from "../formula/index.ts";
import type { Clause, DesignCode, Found } from "./contract.ts";
import { ec52004 } from "./ec5-2004/index.ts";
import { usAsd2018 } from "./us-asd-2018/index.ts";

export const designCodes: readonly DesignCode[] = [usAsd2018, ec52004];

const known = designCodes.map((c) => c.id).join(", ");

/** Title of the input that names a code, with the known ones. */
export const CODE_FIELD_TITLE = `Design code (${known})`;

/** Finds a design code by id; an unknown id is a problem that lists the known ones. */
export function designCode(id: string): Found<DesignCode> {
  const value = designCodes.find((c) => c.id === id);
  if (value) return { ok: true, value };
  return {
    ok: false,
    problems: [inputProblem("code", id, `"${id}" is not a known design code`, `Use one of: ${known}.`)],
  };
}

/** What every code says of some checks: the sources of a calculation that runs under any of them. */
export const clausesOf = (...clauses: readonly Clause[]): readonly Source[] =>
  designCodes.flatMap((code) => clauses.map((clause) => code.rule(clause)));
