export type * from "./types.ts";
export { hatched } from "./hatch.ts";
export {
  allShapes,
  area,
  bold,
  boxShape,
  disc,
  faint,
  medium,
  sceneTexts,
  stroked,
  thin,
  words,
} from "./shapes.ts";
