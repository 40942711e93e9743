export { InflateFault, inflate } from "./inflate.ts";
