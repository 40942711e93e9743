export type * from "./types.ts";
export type * from "./tables.ts";
