import type { Json } from "@causey/engine/formula";
import type { Edit } from "@causey/engine/plan";
import { reportIssues } from "../plan/issues.ts";
import { Findings } from "../problem/index.ts";
import { editSchema } from "./edit-schema.ts";

const kinds = editSchema.def.options.flatMap((option) =>
  "shape" in option ? option.shape.type.def.values : ["set-section" as const],
);

/**
 * One edit from parsed JSON, as the page sends it. Throws `ProblemError` with every fault; unknown keys are faults.
 * Checks the form alone: what the edit names, and whether it fits the plan, is for `applyEdit`.
 */
export function readEdit(value: Json | undefined): Edit {
  const found = new Findings("edit");
  if (typeof value !== "object" || value === null || Array.isArray(value))
    return found.stop({
      code: "edit",
      place: "edit",
      value,
      message: "An edit is an object in curly brackets.",
      mend: 'Give "edit" as {"type": ...}.',
    });
  const type: unknown = Object.hasOwn(value, "type") ? (value as { readonly type: Json }).type : undefined;
  if (!kinds.some((kind) => kind === type))
    return found.stop({
      code: "edit",
      place: "type",
      value: type,
      message: "This kind of edit is not known.",
      mend: `Give "type" as one of ${kinds.join(", ")}.`,
    });
  const parsed = editSchema.safeParse(value);
  if (parsed.success) return parsed.data;
  reportIssues(found, value, parsed.error.issues);
  found.throwIfErrors();
  throw new Error("the schema refused an edit without naming a fault");
}
