export { tables } from "./tables.ts";
