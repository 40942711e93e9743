export { refitFrom } from "./as-laid.ts";
export { searchLayout } from "./lay-out.ts";
