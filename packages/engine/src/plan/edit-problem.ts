import { shorten, type Problem } from "../formula/index.ts";

/** A fault of an edit; `place` is the path inside the edit. */
export const editProblem = (place: string, value: unknown, message: string, mend: string): Problem => ({
  code: "edit",
  severity: "error",
  file: "edit",
  place,
  value: typeof value === "number" ? String(value) : shorten(value),
  message,
  mend,
});

/** The fault of naming something the plan does not have; none when the id is known. */
export const unknownIdFault = (
  kind: string,
  id: string,
  known: readonly { readonly id: string }[],
  place = kind,
): Problem[] =>
  known.some((item) => item.id === id)
    ? []
    : [
        editProblem(
          place,
          id,
          `the plan has no ${kind} with this id`,
          known.length > 0
            ? `Give one of: ${known.map((item) => item.id).join(", ")}.`
            : `The plan has no ${kind} yet.`,
        ),
      ];
