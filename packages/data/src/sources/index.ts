export { sources, type SourceId } from "./sources.ts";
