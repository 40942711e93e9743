export { readTerrain, type Terrain, type TerrainOptions } from "./read-terrain.ts";
export { MAX_CELLS } from "./grid.ts";
