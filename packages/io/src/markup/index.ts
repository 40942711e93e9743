export { readGpx } from "./read-gpx.ts";
export { readKml } from "./read-kml.ts";
export { writeGpx, type Track, type Waypoint } from "./write-gpx.ts";
