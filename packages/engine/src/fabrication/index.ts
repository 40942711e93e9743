export type * from "./types.ts";
export type * from "./solver.ts";
