export { compressibleSoils } from "./compressible-soils.ts";
export { muskegs, terrains } from "./terrain-sinkage.ts";
