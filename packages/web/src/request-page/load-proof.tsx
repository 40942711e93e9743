import { tables } from "@causey/data/tables";
import type { CarryParty, Plan } from "@causey/engine/plan";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { MassField } from "../fields/mass-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { YesField } from "../fields/yes-field.tsx";

const FRESH_PARTY: CarryParty = { people: 4, person_kg: 110, load_kg: 60, spacing_mm: 760 };

/** What the walkway must carry beside its visits: loads of rules, a party that carries, stacks while it is laid. */
export function LoadProof({ plan }: { readonly plan: Plan }) {
  const { value: proof, change } = useSection(plan, "proof");
  const { load_rules, carry } = proof;
  const turn = (id: string, on: boolean): void =>
    change({ load_rules: on ? [...load_rules, id] : load_rules.filter((r) => r !== id) });
  return (
    <FieldGroup
      title="Loads beside the visits"
      note="One load of 300 lb anywhere is always asked for. Which rule your place asks for, its officials say."
    >
      <fieldset className="fields fields-checks">
        <legend className="unseen">Loads of rules</legend>
        {tables.load_rules.map((rule) => (
          <YesField
            key={rule.id}
            label={rule.name}
            description={rule.asked_by}
            value={load_rules.includes(rule.id)}
            onTake={(on) => turn(rule.id, on)}
          />
        ))}
      </fieldset>
      <div className="fields">
        <YesField
          label="Several people carry one load between them"
          value={carry !== null}
          onTake={(on) => change({ carry: on ? FRESH_PARTY : null })}
        />
        {carry && <CarryFields carry={carry} units={plan.units} onTake={(next) => change({ carry: next })} />}
        <NumberField
          label="Modules stacked on a laid one"
          whole
          least={0}
          most={20}
          value={proof.stacked_modules}
          onTake={(stacked_modules) => change({ stacked_modules })}
        />
      </div>
    </FieldGroup>
  );
}

function CarryFields({
  carry,
  units,
  onTake,
}: {
  readonly carry: CarryParty;
  readonly units: Plan["units"];
  readonly onTake: (carry: CarryParty) => void;
}) {
  return (
    <>
      <NumberField
        label="Carriers of that load"
        whole
        least={1}
        value={carry.people}
        onTake={(people) => onTake({ ...carry, people })}
      />
      <MassField
        label="Mass of one carrier"
        units={units}
        value={carry.person_kg}
        onTake={(person_kg) => onTake({ ...carry, person_kg })}
      />
      <MassField
        label="The load they carry"
        units={units}
        value={carry.load_kg}
        onTake={(load_kg) => onTake({ ...carry, load_kg })}
      />
      <LengthField
        label="Between one carrier and the next"
        units={units}
        size="small"
        least_m={0.1}
        value={carry.spacing_mm / 1000}
        onTake={(m) => onTake({ ...carry, spacing_mm: m * 1000 })}
      />
    </>
  );
}
