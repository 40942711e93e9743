import { ProblemError } from "@causey/engine/formula";

/**
 * Features that come in, added to those that stand: in the order of both. An id that stands already is replaced where
 * the user said so; otherwise it is refused, all of them at once, for nothing may stand twice or vanish unasked.
 *
 * file  name of what comes in, for the message
 */
export function mergeById<T extends { readonly id: string }>(
  standing: readonly T[],
  incoming: readonly T[],
  { file, isReplacing }: { readonly file: string; readonly isReplacing: boolean },
): readonly T[] {
  const coming = new Map(incoming.map((f) => [f.id, f]));
  const twice = standing.filter((f) => coming.has(f.id));
  if (twice.length > 0 && !isReplacing)
    throw new ProblemError(
      twice.map((f) => ({
        severity: "error",
        code: "import-id-stands",
        file,
        place: `feature "${f.id}"`,
        value: f.id,
        message: `The plan holds "${f.id}" already.`,
        mend: "Say --replace if it is the same one in a newer form, or give it another id.",
      })),
    );
  const known = new Set(standing.map((f) => f.id));
  return [...standing.map((f) => coming.get(f.id) ?? f), ...incoming.filter((f) => !known.has(f.id))];
}
