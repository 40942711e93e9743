import { ProblemError } from "@causey/engine/formula";
import type { PlanFiles } from "@causey/io/files";
import type { Store } from "@causey/runtime/store";
import type { PlanFormat } from "../app/index.ts";

/**
 * Puts the demo plans into a store that has no plan yet, in the order given: the last one is opened first. A demo that
 * cannot be read is reported and left out: the user's own plans are not to wait for it.
 */
export async function seedDemo(
  store: Store,
  plans: PlanFormat,
  demos: readonly (() => Promise<PlanFiles>)[],
  report: (error: unknown) => void,
): Promise<void> {
  if ((await store.listPlans()).length > 0) return;
  for (const demo of demos)
    try {
      const files = await demo();
      const reading = await plans.read(files);
      if (!reading.ok) throw new ProblemError(reading.problems);
      await store.createPlan(reading.plan, plans.beside(reading.plan, files));
    } catch (error) {
      report(error);
    }
}
