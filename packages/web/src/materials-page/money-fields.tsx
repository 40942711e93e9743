import type { Plan } from "@causey/engine/plan";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { moneyLines } from "./money-lines.ts";

/** The rates behind the money; each is saved by itself. */
export function MoneyFields({ plan }: { readonly plan: Plan }) {
  const { value: money, change } = useSection(plan, "money");
  const saw = useSection(plan, "saw");
  return (
    <FieldGroup title="Rates and shares">
      <div className="fields">
        {moneyLines.map(({ key, label, unit, description }) => (
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
