import type { Source, TraceStep } from "@causey/engine/formula";
import { showQuantity, type UnitSystem } from "@causey/engine/units";
import type { Block } from "../text/index.ts";

/** Tags of the parts of one check, the many drawn together. */
export const partWords = (parts: readonly string[]): string =>
  parts.length > 4 ? `${parts.slice(0, 3).join(", ")} and ${parts.length - 3} alike` : parts.join(", ");

/** What is said behind a source that nobody has looked up. */
export const memory = (source: Source): string =>
  source.status === "memory"
    ? " (from memory, confirm)"
    : source.status === "practice"
      ? " (common practice, no source)"
      : "";

/** A source with its place and its mark. */
export const sourceWords = (source: Source): string =>
  `${source.title}${source.at ? `, ${source.at}` : ""}${memory(source)}`;

/** One step of a working: title, formula, numbers with units, result, source. */
export function stepBlock(step: TraceStep, units: UnitSystem): Block {
  const numbers = step.inputs
    .filter((i) => step.text.includes(i.symbol))
    .slice(0, 24)
    .map((i) => `${i.symbol} = ${showQuantity(i.value, i.unit, units)}`)
    .join(", ");
  return {
    kind: "text",
    bullet: true,
    text: `${step.title}: ${step.symbol} = ${step.text} = ${showQuantity(step.value, step.unit, units)}${numbers ? ` with ${numbers}` : ""}. ${sourceWords(step.source)}.${step.note && step.note.length < 160 ? ` ${step.note}.` : ""}`,
  };
}
