import type { Field, JsonObject, Problem } from "../formula/index.ts";
import type { Tables } from "../materials/index.ts";
import type { DesignCode, Found, LoadDuration, Member } from "./contract.ts";
import { CODE_FIELD_TITLE, designCode } from "./registry.ts";

/** Inputs that name a piece of graded lumber, shared by the timber methods. */
export const memberFields: readonly Field[] = [
  { key: "code", title: CODE_FIELD_TITLE, type: "string" },
  { key: "species", title: "Species group, for example southern-pine, or softwood", type: "string" },
  { key: "grade", title: "Grade: ss, no1, no2, no3, or strength class: c14 to c30", type: "string" },
  { key: "size", title: "Size, for example 2x8 or 45x195", type: "string" },
];

export const durationField: Field = {
  key: "load_duration",
  title: "Shortest load of the combination",
  type: "string",
  choices: ["permanent", "ten-years", "two-months", "seven-days", "ten-minutes", "impact"],
};

export const loadDuration = (input: JsonObject): LoadDuration => input["load_duration"] as LoadDuration;

/** Finds code and member of an input, or every problem with them at once. */
export function readMember(
  input: JsonObject,
  tables: Tables,
): Found<{ readonly code: DesignCode; readonly member: Member }> {
  const code = designCode(input["code"] as string);
  const [species, grade, size] = ["species", "grade", "size"].map((k) => input[k] as string);
  const problems: Problem[] = code.ok ? [] : [...code.problems];
  const member = (code.ok ? code.value : null)?.member(tables, species!, grade!, size!);
  if (member && !member.ok) problems.push(...member.problems);
  if (!code.ok || !member?.ok) return { ok: false, problems };
  return { ok: true, value: { code: code.value, member: member.value } };
}
