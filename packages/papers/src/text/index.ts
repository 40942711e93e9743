export type { Block, Table } from "./blocks.ts";
export { flow, flowHeight } from "./flow.ts";
export { inFont, textWidth, wrap, type Weight } from "./measure.ts";
export { SIZE } from "./piece.ts";
