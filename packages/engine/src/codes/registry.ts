import { inputProblem } from "../formula/index.ts";
import type { DesignCode, Found } from "./contract.ts";
import { usAsd2018 } from "./us-asd-2018/index.ts";

export const designCodes: readonly DesignCode[] = [usAsd2018];

/** Finds a design code by id; an unknown id is a problem that lists the known ones. */
export function designCode(id: string): Found<DesignCode> {
  const value = designCodes.find((c) => c.id === id);
  if (value) return { ok: true, value };
  const known = designCodes.map((c) => c.id).join(", ");
  return {
    ok: false,
    problems: [inputProblem("code", id, `"${id}" is not a known design code`, `Use one of: ${known}.`)],
  };
}
