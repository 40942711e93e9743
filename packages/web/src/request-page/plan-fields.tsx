import type { Plan } from "@causey/engine/plan";
import { useDesk } from "../desk/desk.ts";
import { DayField } from "../fields/day-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useSection } from "../fields/use-section.ts";

/** What the plan is called, and from when to when its walkway stands. */
export function PlanFields({ plan }: { readonly plan: Plan }) {
  const desk = useDesk();
  const site = useSection(plan, "site_name");
  const { value: laying, change } = useSection(plan, "laying");
  const removal = useSection(plan, "removal");
  return (
    <FieldGroup
      title="The plan"
      note="Seasonal closures are held against the days of laying; the budget runs from the laying to the removal."
    >
      <div className="fields">
        <TextField
          required
          label="Name of the plan"
          value={plan.name}
          onTake={(name) => desk.plan.edit({ type: "rename", name })}
        />
        <TextField required label="Name of the site" value={site.value} onTake={site.take} />
        <DayField label="Laying, first day" value={laying.from} onTake={(from) => change({ from })} />
        <DayField label="Laying, last day" value={laying.to} onTake={(to) => change({ to })} />
        <DayField label="Taken out by" value={removal.value.by} onTake={(by) => removal.take({ by })} />
        <LengthField
          label="Carried from store to start"
          units={plan.units}
          least_m={0}
          value={laying.carry_m}
          onTake={(carry_m) => change({ carry_m })}
        />
        <NumberField
          label="People who carry one module"
          whole
          least={1}
          value={laying.carriers}
          onTake={(carriers) => change({ carriers })}
        />
      </div>
    </FieldGroup>
  );
}
