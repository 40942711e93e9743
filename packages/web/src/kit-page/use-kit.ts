import type { Kit } from "@causey/engine/kit";
import type { Plan } from "@causey/engine/plan";
import { useDesk } from "../desk/desk.ts";

/** The plan's recipe and how to change it; what cannot be built comes back as a refusal with its mends. */
export function useKit(plan: Plan): { readonly kit: Kit; readonly change: (some: Partial<Kit>) => void } {
  const desk = useDesk();
  return {
    kit: plan.kit,
    change: (some) => desk.plan.edit({ type: "set-kit", kit: { ...plan.kit, ...some } }),
  };
}
