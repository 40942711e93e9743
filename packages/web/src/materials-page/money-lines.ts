import type { MoneyChoice } from "@causey/engine/plan";

type Key = {
  [K in keyof MoneyChoice]-?: MoneyChoice[K] extends number | undefined ? K : never;
}[keyof MoneyChoice];

export interface MoneyLine {
  readonly key: Key;
  readonly label: string;
  readonly unit: "money" | "%" | "h" | "";
  readonly description?: string;
}

/** The rates and shares behind the money, in the order of the page. */
export const moneyLines: readonly MoneyLine[] = [
  { key: "labour_per_hour", label: "Labour, one hour", unit: "money" },
  { key: "donated_share", label: "Hours given by volunteers", unit: "%" },
  {
    key: "donated_per_hour",
    label: "Counted for a volunteer's hour",
    unit: "money",
    description: "As the funder's rule says.",
  },
  { key: "jig_hours_per_module", label: "Work in the jig, one module", unit: "h" },
  { key: "removal_share", label: "Removal, share of the laying hours", unit: "%" },
  { key: "inspections_per_year", label: "Inspection rounds a year", unit: "" },
  { key: "hours_per_inspection", label: "One round", unit: "h" },
  { key: "repair_share_per_year", label: "Materials replaced a year", unit: "%" },
  {
    key: "monitoring_per_year",
    label: "Monitoring, a year",
    unit: "money",
    description: "Watching plants and ground while it stands.",
  },
  { key: "tax_share", label: "Tax on materials", unit: "%" },
  { key: "contingency_share", label: "Contingency", unit: "%" },
  { key: "delivery", label: "Delivery", unit: "money" },
  { key: "disposal", label: "Disposal", unit: "money" },
  { key: "price_age_days", label: "A price is old after, days", unit: "" },
];
