import { Button } from "@mantine/core";
import type { Plan, Visit } from "@causey/engine/plan";
import { DayField } from "../fields/day-field.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { MassField } from "../fields/mass-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { YesField } from "../fields/yes-field.tsx";
import { CartFields } from "./cart-fields.tsx";
import { handCart } from "./cart-words.ts";

interface Props {
  readonly visit: Visit;
  readonly plan: Plan;
  readonly onTake: (visit: Visit) => void;
  readonly onRemove: () => void;
}

/** One kind of visit. */
export function VisitFields({ visit, plan, onTake, onRemove }: Props) {
  const change = (some: Partial<Visit>): void => onTake({ ...visit, ...some });
  return (
    <fieldset className="visit" data-visit={visit.id}>
      <legend>{visit.name}</legend>
      <div className="fields">
        <TextField
          required
          label="Name of the visit"
          value={visit.name}
          onTake={(name) => change({ name })}
        />
        <NumberField
          label="Times a year"
          value={visit.per_year}
          least={0.1}
          onTake={(per_year) => change({ per_year })}
        />
        <DayField label="First day" value={visit.from} onTake={(from) => change({ from })} />
        <DayField
          label="Last day"
          optional
          description={visit.to === null ? "No last day told: ask for it." : ""}
          value={visit.to}
          onTake={(to) => change({ to })}
        />
        <NumberField
          label="People at once"
          whole
          least={1}
          value={visit.people}
          onTake={(people) => change({ people })}
        />
        <MassField
          label="Mass of one, with pack"
          units={plan.units}
          value={visit.person_kg}
          onTake={(person_kg) => change({ person_kg })}
        />
        <LengthField
          label="Apart, one behind the other"
          units={plan.units}
          least_m={0.1}
          value={visit.spacing_mm / 1000}
          onTake={(metres) => change({ spacing_mm: metres * 1000 })}
        />
        <fieldset className="fields-wide visit-plots">
          <legend>Goes to</legend>
          {plan.plots.map((plot) => (
            <YesField
              key={plot.id}
              label={plot.name}
              value={visit.plots.includes(plot.id)}
              onTake={(goes) => {
                const plots = plan.plots
                  .map((p) => p.id)
                  .filter((id) => (id === plot.id ? goes : visit.plots.includes(id)));
                if (plots.length > 0) change({ plots });
              }}
            />
          ))}
        </fieldset>
      </div>
      {visit.cart ? (
        <CartFields
          cart={visit.cart}
          units={plan.units}
          onTake={(cart) => change({ cart })}
          onRemove={() => change({ cart: null })}
        />
      ) : (
        <Button variant="default" size="compact-sm" onClick={() => change({ cart: handCart })}>
          They bring a cart
        </Button>
      )}
      <Button variant="default" size="compact-sm" onClick={onRemove}>
        Remove this visit
      </Button>
    </fieldset>
  );
}
