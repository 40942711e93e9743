import type { Unit } from "../units/index.ts";
import { defineFormula, type Formula, type Trace } from "./formula.ts";
import type { Source } from "./source.ts";

/** A formula without inputs: a factor or a decision that a reviewer must see in the list, with its source. */
export type Constant<U extends Unit = Unit> = Formula<Readonly<Record<string, never>>, U>;

/**
 * Makes a sourced constant. `text` may show how the SI number comes about (`"300 * 4.4482216152605"`) and must
 * evaluate to `value`; without it the number itself is printed.
 */
export function defineConstant<const U extends Unit>(
  id: string,
  title: string,
  symbol: string,
  value: number,
  unit: U,
  source: Source,
  text: string = String(value),
): Constant<U> {
  return defineFormula(
    { id, title, symbol, unit, text, inputs: {}, validity: "A fixed value.", source },
    () => value,
  );
}

/** A value that is read, chosen or found by a method, not computed by a formula. */
export interface RecordedValue {
  readonly id: string;
  readonly title: string;
  readonly symbol: string;
  readonly value: number;
  readonly unit: Unit;
  readonly source: Source;
  /** What stands in the place of a formula: "as tabulated", "as asked", "largest over all positions". */
  readonly how: string;
  readonly note?: string;
}

/** Adds such a value to the working, so that the reader sees where every number came from. */
export function recordValue(trace: Trace | undefined, value: RecordedValue): void {
  if (!trace) return;
  const { how, note, ...rest } = value;
  trace.push({ ...rest, text: how, inputs: [], ...(note === undefined ? {} : { note }) });
}
