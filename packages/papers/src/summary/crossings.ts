import type { Plan } from "@causey/engine/plan";

/**
 * What is said where no crossing was found: that there is none can be said only of a plan that names channels or pools.
 *
 * zones  the plan's areas as the reader may see them
 */
export const noCrossingWords = ({ zones }: Pick<Plan, "zones">): string =>
  zones.some((z) => z.use === "channel" || z.use === "pool")
    ? "none"
    : "not looked for: no channel or pool area was given";
