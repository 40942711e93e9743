export { readTerrain, type Terrain, type TerrainOptions } from "./read-terrain.ts";
export { MAX_CELLS } from "./grid.ts";
export { blocksOf } from "./tiff-cells.ts";
export { TAG, TiffDirectory } from "./tiff-directory.ts";
export { readPlace } from "./tiff-geo.ts";
export { readLayout, type TiffLayout } from "./tiff-layout.ts";
