import * as z from "zod/mini";

// Without this the package tries to compile code at run time, which a strict content security policy forbids.
z.config({ jitless: true });

export { z };

/** One line of text that is not blank. Control characters would break tables and terminals. */
export const line = z
  .string()
  .check(z.maxLength(500), z.regex(/^(?=.*\S)[^\p{Cc}]*$/u, "one line of text that is not blank"));
/** Text that may be empty or run over several lines. */
export const note = z.string().check(z.maxLength(5000));
export const id = z
  .string()
  .check(z.regex(/^[^\s\p{Cc}]{1,80}$/u, "one word without blanks, at most 80 characters"));
/** A real calendar day, year-month-day. */
export const day = z.iso.date();
export const number = z.number();
export const positive = z.number().check(z.positive());
export const notNegative = z.number().check(z.nonnegative());
export const count = z.int().check(z.minimum(1), z.maximum(100_000));
/** A share of the whole, 0 to 1. */
export const share = z.number().check(z.minimum(0), z.maximum(1));
/** A list with a bound, so that a hostile file cannot make the program work for hours. */
export const list = <T extends z.core.SomeType>(item: T, most = 1000): z.ZodMiniArray<T> =>
  z.array(item).check(z.maxLength(most));
