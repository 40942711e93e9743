import type { Fastener } from "@causey/engine/materials";
import { clips } from "./clips.ts";
import { lagScrews } from "./lags.ts";
import { metricFasteners } from "./metric.ts";
import { nails } from "./nails.ts";
import { woodScrews } from "./screws.ts";

export { holes } from "./holes.ts";

/** Screws, nails and clips a kit may name. */
export const fasteners: readonly Fastener[] = [
  ...woodScrews,
  ...nails,
  ...lagScrews,
  ...clips,
  ...metricFasteners,
];
