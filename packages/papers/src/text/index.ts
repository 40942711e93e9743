export { inFont, textWidth, wrap, type Weight } from "./measure.ts";
export { flow, flowHeight, SIZE, type Block, type Table } from "./flow.ts";
