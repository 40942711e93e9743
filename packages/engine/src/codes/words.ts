import type { Problem } from "../formula/index.ts";

export type LoadDuration = "permanent" | "ten-years" | "two-months" | "seven-days" | "ten-minutes" | "impact";

/** A value, or every reason why there is none. */
export type Found<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };
