/** Every unit a value inside the engine may carry. SI only; other units live at the edge (see `convert.ts`). */
export type Unit =
  | "1"
  | "m"
  | "m2"
  | "m3"
  | "m4"
  | "kg"
  | "kg/m"
  | "kg/m2"
  | "kg/m3"
  | "N"
  | "N/m"
  | "N*m"
  | "Pa"
  | "N*m2"
  | "N/m3"
  | "m/s"
  | "s"
  | "Hz"
  | "h"
  | "rad"
  | "money";

declare const tag: unique symbol;

/** A finite number that is known, at compile time, to be in unit `U`. */
export type Qty<U extends Unit = Unit> = number & { readonly [tag]: U };

/** A broken promise inside the program: a caller passed what the docstring forbids. */
export class DomainError extends Error {
  readonly code: string;
  readonly values: Readonly<Record<string, unknown>>;
  constructor(code: string, values: Readonly<Record<string, unknown>> = {}, cause?: unknown) {
    super(`${code} ${JSON.stringify(values)}`, cause === undefined ? undefined : { cause });
    this.name = "DomainError";
    this.code = code;
    this.values = values;
  }
}

/** Tags a number with its unit. Throws `DomainError` on NaN or infinity: a silent NaN is a bug. */
export function qty<const U extends Unit>(value: number, unit: U): Qty<U> {
  if (!Number.isFinite(value)) throw new DomainError("not-a-finite-number", { value: String(value), unit });
  return value as Qty<U>;
}
