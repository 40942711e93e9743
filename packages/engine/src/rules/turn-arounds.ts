import type { Layout } from "../layout/types.ts";

/** The last place to turn before a walkway's end, which a sign must name. */
export interface LastTurnAround {
  readonly branch: string;
  /** Tag of the platform; the start's or platform's id where the branch has none of its own. */
  readonly at: string;
  /** Length of the dead end beyond it [m]. */
  readonly beyond_m: number;
}

/** For every branch that does not end on a platform: where to turn last. Branches that end on one are left out. */
export function lastTurnArounds(layout: Layout): LastTurnAround[] {
  return layout.branches.flatMap((branch) => {
    const parts = layout.parts.filter((p) => p.branch === branch.id);
    const last = parts.at(-1);
    if (!last || last.kind === "platform") return [];
    const platform = parts.findLast((p) => p.kind === "platform");
    const passed = platform ? parts.slice(parts.indexOf(platform) + 1) : parts;
    const beyond_m = passed.reduce((sum, p) => sum + (p.kind === "module" ? p.length_m : p.side_m), 0);
    return [{ branch: branch.id, at: platform?.id ?? branch.from, beyond_m }];
  });
}
