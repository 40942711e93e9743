export { barGratings } from "./bar-gratings.ts";
export { plywood } from "./plywood.ts";
export { meshes, wires } from "./wires.ts";
