import type { Plan } from "@causey/engine/plan";
import type { Reading } from "./show.ts";

export const readingOf = (plan: Plan): Reading => ({ units: plan.units, currency: plan.money.currency });
