export {
  photoHead,
  photoPixels,
  readPhoto,
  type PhotoExtent,
  type PhotoHead,
  type PhotoRead,
} from "./read-photo.ts";
export { isWorldName, readWorldFile, WORLD_ENDINGS, type World } from "./world-file.ts";
export { MAX_PIXELS, type Pixels } from "./tiff-picture.ts";
