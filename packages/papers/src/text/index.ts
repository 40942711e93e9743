export { inFont, textWidth, wrap, type Weight } from "./measure.ts";
export { flow, SIZE, type Block, type Table } from "./flow.ts";
