import type { Plan } from "@causey/engine/plan";
import type { StrengthReading } from "@causey/engine/site";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { freeId } from "../fields/free-id.ts";
import { RowEditor, type Column } from "../fields/row-editor.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { ImportButton } from "./import-button.tsx";

/** Readings carry no id in the plan; their place in the list stands in for one while they are edited. */
type Row = StrengthReading & { readonly id: string };

const columns: readonly Column<Row>[] = [
  { key: "x", label: "East on the grid", as: "number", unit: "m" },
  { key: "y", label: "North on the grid", as: "number", unit: "m" },
  { key: "depth_m", label: "Depth", as: "length", least: 0 },
  { key: "su_kpa", label: "Undrained strength, corrected", as: "number", unit: "kPa", least: 0 },
  { key: "remoulded_kpa", label: "Remoulded", as: "optional-number", unit: "kPa", empty: undefined },
  { key: "vane_mm", label: "Vane (mm x mm)", as: "text" },
  { key: "source", label: "Source", as: "text", required: true },
];

/** How strong the ground is: readings, and the value where none lies near. */
export function StrengthFields({ plan }: { readonly plan: Plan }) {
  const { value: ground, change } = useSection(plan, "ground");
  const rows = ground.readings.map((reading, i): Row => ({ ...reading, id: `R${i + 1}` }));
  const at = plan.starts[0] ?? { x: 0, y: 0 };
  return (
    <FieldGroup
      title="Strength of the ground"
      note="A cone index is no vane strength: only corrected undrained strengths belong here."
    >
      <div className="fields">
        <NumberField
          label="Where no reading lies near"
          unit="kPa"
          optional
          value={ground.su_kpa}
          onTake={(su_kpa) => change({ su_kpa })}
        />
        <TextField required label="Source" value={ground.source} onTake={(source) => change({ source })} />
        <NumberField
          label="Required safety on bearing"
          least={1}
          value={ground.safety}
          onTake={(safety) => change({ safety })}
        />
      </div>
      <ImportButton kind="shear" plan={plan} />
      <RowEditor<Row>
        noun="reading"
        rows={rows}
        columns={columns}
        units={plan.units}
        titleOf={(r) => r.id}
        fresh={() => ({
          id: freeId("R", rows),
          x: at.x,
          y: at.y,
          depth_m: 0.3,
          su_kpa: 5,
          source: "hand vane, corrected",
        })}
        onTake={(next) => change({ readings: next.map((row) => withoutEmptyVane(withoutId(row))) })}
      />
    </FieldGroup>
  );
}

function withoutId(row: Row): StrengthReading {
  const { id: _, ...reading } = row;
  return reading;
}

function withoutEmptyVane(reading: StrengthReading): StrengthReading {
  const { vane_mm, ...rest } = reading;
  return vane_mm ? reading : rest;
}
