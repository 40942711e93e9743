export type * from "./types.ts";
export { requestGaps, type RequestGap } from "./gaps.ts";
