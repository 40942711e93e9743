export { toSvg } from "./to-svg.ts";
