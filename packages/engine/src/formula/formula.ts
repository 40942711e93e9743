import { qty, type Qty, type Unit } from "../units/index.ts";
import type { Source } from "./source.ts";

/** One line of working, plain data: every shell renders the same steps. */
export interface TraceStep {
  readonly id: string;
  readonly title: string;
  readonly symbol: string;
  readonly text: string;
  readonly inputs: readonly { readonly symbol: string; readonly value: number; readonly unit: Unit }[];
  readonly value: number;
  readonly unit: Unit;
  readonly source: Source;
  readonly note?: string;
}
export type Trace = TraceStep[];

export type Args<I extends Readonly<Record<string, Unit>>> = { readonly [K in keyof I]: Qty<I[K]> };

export interface FormulaSpec<
  I extends Readonly<Record<string, Unit>> = Readonly<Record<string, Unit>>,
  U extends Unit = Unit,
> {
  readonly id: string;
  readonly title: string;
  readonly symbol: string;
  readonly unit: U;
  /** The formula as printed in the working: + - * / ^, parentheses, min, max, sqrt, pi and the symbols of `inputs`. */
  readonly text: string;
  readonly inputs: I;
  readonly validity: string;
  readonly source: Source;
}

export interface Formula<
  I extends Readonly<Record<string, Unit>> = Readonly<Record<string, Unit>>,
  U extends Unit = Unit,
> {
  (args: Args<I>, trace?: Trace, note?: string): Qty<U>;
  readonly spec: FormulaSpec<I, U>;
}

/** Any formula, whatever its inputs: for lists of formulas and for showing one as a calculation. */
export type AnyFormula = ((args: never, trace?: Trace, note?: string) => number) & {
  readonly spec: FormulaSpec;
};

/**
 * Makes a formula whose printed text and code are one thing: a property test evaluates `text` on random
 * inputs and demands the value of `compute`. Throws `DomainError` when the value is not finite.
 */
export function defineFormula<const I extends Readonly<Record<string, Unit>>, const U extends Unit>(
  spec: FormulaSpec<I, U>,
  compute: (args: Args<I>) => number,
): Formula<I, U> {
  const run = (args: Args<I>, trace?: Trace, note?: string): Qty<U> => {
    const value = qty(compute(args), spec.unit);
    trace?.push({
      id: spec.id,
      title: spec.title,
      symbol: spec.symbol,
      text: spec.text,
      inputs: Object.entries(spec.inputs).map(([symbol, unit]) => ({
        symbol,
        value: args[symbol as keyof I] as number,
        unit,
      })),
      value,
      unit: spec.unit,
      source: spec.source,
      ...(note === undefined ? {} : { note }),
    });
    return value;
  };
  return Object.assign(run, { spec });
}
