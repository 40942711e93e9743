import { recordValue, type Trace } from "../formula/index.ts";
import type { SupportKind } from "../kit/index.ts";
import { metres, showQuantity, type Qty } from "../units/index.ts";
import type { Setting } from "./setting.ts";

export interface Leeway {
  readonly most: Qty<"m">;
  readonly words: string;
}

/**
 * How far a support may settle: one step of its height, which a crew can make good by packing it up; a support of one
 * height has the plan's least clearance over the ground instead.
 */
export function leewayOf({ input, context }: Setting, support: SupportKind, trace: Trace): Leeway {
  const step = support.height_step_mm > 0 && support.height_max_mm > support.height_min_mm;
  const most = metres((step ? support.height_step_mm : input.plan.layout.min_clear_mm) / 1000);
  const title = step ? `Height step of "${support.name}"` : "Least clearance of the deck over the ground";
  const source = step
    ? ({ id: "kit", title: "The plan's kit of parts", status: "project" } as const)
    : ({ id: "plan-layout", title: "The plan's choices for the layout", status: "project" } as const);
  recordValue(trace, {
    id: "check.settling.leeway",
    title,
    symbol: "z_a",
    value: most,
    unit: "m",
    source,
    how: "as given",
  });
  const shown = showQuantity(most, "m", context.units);
  const words = step
    ? `one step of its height makes ${shown} good`
    : `the deck is to stay ${shown} over the ground`;
  return { most, words };
}
