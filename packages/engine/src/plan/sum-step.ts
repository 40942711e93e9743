import type { Source, TraceStep } from "../formula/index.ts";
import type { Unit } from "../units/index.ts";

export interface Term {
  readonly symbol: string;
  readonly title: string;
  readonly count: number;
  readonly value: number;
  readonly unit: Unit;
}

/** One line of working for a sum of counted things: the printed text and the sum come from the same terms. */
export function sumStep(
  spec: {
    readonly id: string;
    readonly title: string;
    readonly symbol: string;
    readonly unit: Unit;
    readonly source: Source;
  },
  terms: readonly Term[],
): TraceStep {
  return {
    ...spec,
    text: terms.length === 0 ? "0" : terms.map((t) => `n_${t.symbol} * ${t.symbol}`).join(" + "),
    inputs: terms.flatMap((t) => [
      { symbol: `n_${t.symbol}`, value: t.count, unit: "1" as const },
      { symbol: t.symbol, value: t.value, unit: t.unit },
    ]),
    value: terms.reduce((sum, t) => sum + t.count * t.value, 0),
    ...(terms.length === 0 ? {} : { note: terms.map((t) => `${t.symbol}: ${t.title}`).join("; ") }),
  };
}
