export { readShapefile, shapefilesIn } from "./read-shapefile.ts";
