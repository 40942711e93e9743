import { say } from "./faults.ts";
import type { SupportKind } from "./types.ts";

/** Posts over 24 in want an engineer; a decision of this project. */
const TALL_POST_MM = 609.6;

/** Why an engineer must look at a support before people walk on it; null when nothing asks for one. */
export function engineerBecause(kind: SupportKind): string | null {
  if (kind.form === "screw-pile")
    return "what a screw pile holds is known only from its torque in this very ground and from trained installers";
  if (kind.form === "float")
    return "a floating walkway moves, tips and pulls on its anchors, and waves and ice come on top";
  if (kind.form === "post-pair" && kind.height_max_mm > TALL_POST_MM)
    return `posts over ${say(TALL_POST_MM)} can fold sideways`;
  return null;
}
