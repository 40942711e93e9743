import { defineConstant } from "../../formula/index.ts";
import type { LoadDuration } from "../contract.ts";
import { nds } from "./sources.ts";

const duration = (id: LoadDuration, title: string, value: number) =>
  defineConstant(
    `us-asd-2018.duration.${id}`,
    `Load duration factor, ${title}`,
    "CD",
    value,
    "1",
    nds("Table 2.3.2", "memory"),
  );

/** CD by the shortest load of the combination; never on Fcp, E or Emin. People and carts: ten years. */
export const durationFactors = {
  permanent: duration("permanent", "permanent load", 0.9),
  "ten-years": duration("ten-years", "ten years (people, carts)", 1),
  "two-months": duration("two-months", "two months (snow)", 1.15),
  "seven-days": duration("seven-days", "seven days (building)", 1.25),
  "ten-minutes": duration("ten-minutes", "ten minutes (wind, earthquake)", 1.6),
  impact: duration("impact", "impact", 2),
} as const satisfies Readonly<Record<LoadDuration, unknown>>;
