export { groundFile, readGround } from "./read-ground.ts";
