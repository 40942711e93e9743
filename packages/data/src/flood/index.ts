export { dragCoefficients } from "./drag-coefficients.ts";
