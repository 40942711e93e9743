import type { MoneyChoice, Plan } from "@causey/engine/plan";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { useSection } from "../fields/use-section.ts";

type Key = {
  [K in keyof MoneyChoice]-?: MoneyChoice[K] extends number | undefined ? K : never;
}[keyof MoneyChoice];

interface Line {
  readonly key: Key;
  readonly label: string;
  readonly unit: "money" | "%" | "h" | "";
  readonly description?: string;
}

const lines: readonly Line[] = [
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

/** The rates behind the money; each is saved by itself. */
export function MoneyFields({ plan }: { readonly plan: Plan }) {
  const { value: money, change } = useSection(plan, "money");
  const saw = useSection(plan, "saw");
  return (
    <FieldGroup title="Rates and shares">
      <div className="fields">
        {lines.map(({ key, label, unit, description }) => (
          <NumberField
            key={key}
            label={label}
            least={0}
            {...(unit === "%" ? { unit: "%", scale: 100, most: key === "removal_share" ? 1000 : 100 } : {})}
            {...(unit === "money" ? { unit: money.currency } : unit === "h" ? { unit: "hours" } : {})}
            {...(description === undefined ? {} : { description })}
            value={money[key] ?? 0}
            onTake={(value) => change({ [key]: value })}
          />
        ))}
        <LengthField
          label="Saw cut"
          size="small"
          units={plan.units}
          least_m={0}
          value={saw.value.kerf_mm / 1000}
          onTake={(metres) => saw.take({ kerf_mm: metres * 1000 })}
        />
      </div>
    </FieldGroup>
  );
}
