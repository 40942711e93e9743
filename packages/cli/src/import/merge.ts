import { ProblemError } from "@causey/engine/formula";
import { mergeById } from "@causey/io/layers";

/**
 * Features that come in, added to those that stand. An id that stands already is replaced where the user said so;
 * otherwise it is refused, all of them at once, for nothing may stand twice or vanish unasked.
 *
 * file  name of what comes in, for the message
 */
export function mergeAsTold<T extends { readonly id: string }>(
  standing: readonly T[],
  incoming: readonly T[],
  { file, isReplacing }: { readonly file: string; readonly isReplacing: boolean },
): readonly T[] {
  const { merged, known } = mergeById(standing, incoming);
  if (known.length > 0 && !isReplacing)
    throw new ProblemError(
      known.map((f) => ({
        severity: "error",
        code: "import-id-stands",
        file,
        place: `feature "${f.id}"`,
        value: f.id,
        message: `The plan holds "${f.id}" already.`,
        mend: "Say --replace if it is the same one in a newer form, or give it another id.",
      })),
    );
  return merged;
}
