export { drive, nextTurn, type Driven } from "./drive.ts";
