/** The type with every level read-only: schemas describe the same data without that word. */
export type Frozen<T> = T extends string | number | boolean | null | undefined
  ? T
  : { readonly [K in keyof T]: Frozen<T[K]> };

/** `true` only when the two types are the same, member by member, optional ones included. */
export type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;
