import { ProblemError } from "@causey/engine/formula";
import type { PlanCrs } from "../crs/index.ts";
import { fault } from "../problem/index.ts";

/**
 * A coordinate system as a person types it: an EPSG code ("EPSG:27700", "27700"), "local", or "local:" with a name.
 * Null for an empty text. Throws `ProblemError` for anything else; whether the code can be laid out in is told by the
 * plan's own reader.
 */
export function freshSystem(text: string): PlanCrs | null {
  const word = text.trim();
  if (word === "") return null;
  const code = /^(?:EPSG:\s*)?(\d{4,7})$/i.exec(word)?.[1];
  if (code !== undefined) return { epsg: Number(code) };
  const local = /^local(?::\s*([^\p{Cc}]{1,200}))?$/iu.exec(word);
  if (local) return { local: local[1]?.trim() || "Site grid" };
  throw new ProblemError([
    fault("plan.json", {
      code: "crs",
      place: "crs",
      value: word,
      message: "This is not the name of a coordinate system.",
      mend: "Give an EPSG code such as EPSG:27700, or local for a grid of your own in metres.",
    }),
  ]);
}
