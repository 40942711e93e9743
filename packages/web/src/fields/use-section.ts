import type { Plan, Section, SectionEdit } from "@causey/engine/plan";
import { useDesk } from "../desk/desk.ts";

/** Changes one section of the plan: `take` sends it whole, `change` with some of its entries replaced. */
export function useSection<S extends Section>(
  plan: Plan,
  section: S,
): {
  readonly value: Plan[S];
  readonly take: (value: Plan[S]) => void;
  readonly change: (some: Partial<Plan[S]>) => void;
} {
  const desk = useDesk();
  const value = plan[section];
  const take = (next: Plan[S]): void =>
    desk.plan.edit({ type: "set-section", section, value: next } as SectionEdit);
  return { value, take, change: (some) => take({ ...(value as object), ...(some as object) } as Plan[S]) };
}
