export { readArchive, writeArchive } from "./archive.ts";
