import type { Plan } from "@causey/engine/plan";
import { M_PER_FT } from "@causey/engine/units";
import { useDesk } from "../desk/desk.ts";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { NumberField } from "../fields/number-field.tsx";

/** What harm counts against money when the search compares two lines. */
export function WeightFields({ plan }: { readonly plan: Plan }) {
  const desk = useDesk();
  const { weights } = plan.layout;
  const { currency } = plan.money;
  const take = (part: Partial<typeof weights>): void =>
    desk.plan.edit({ type: "set-weights", weights: { ...weights, ...part } });
  const isUs = plan.units === "us";
  const area = { unit: `${currency} a ${isUs ? "sq ft" : "m²"}`, scale: isUs ? M_PER_FT ** 2 : 1 };
  return (
    <FieldGroup
      title="Weights of harm"
      note="The search takes the line with the least weighted cost: money and harm together, each harm at the price set here. Higher prices spare more ground and cost more money. They are a judgement of yours, and never paid."
    >
      <div className="fields">
        <NumberField
          label="Shaded ground"
          description="Times the area's own harm per area."
          least={0}
          {...area}
          value={weights.shade_per_m2}
          onTake={(shade_per_m2) => take({ shade_per_m2 })}
        />
        <NumberField
          label="Ground touched by supports"
          description="Times the area's own harm per area."
          least={0}
          {...area}
          value={weights.contact_per_m2}
          onTake={(contact_per_m2) => take({ contact_per_m2 })}
        />
        <NumberField
          label="Crossing a channel or pool"
          unit={`${currency} each`}
          least={0}
          value={weights.crossing}
          onTake={(crossing) => take({ crossing })}
        />
        <NumberField
          label="Money itself counts"
          description="1 as it is; 0 looks at harm alone."
          unit="times"
          least={0}
          value={weights.money}
          onTake={(money) => take({ money })}
        />
      </div>
    </FieldGroup>
  );
}
