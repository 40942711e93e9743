export { linearScale, niceStep, niceTicks, type LinearScale } from "./scale.ts";
export { chartFrame, curve, type Axis, type Chart } from "./axes.ts";
