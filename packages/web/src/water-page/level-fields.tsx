import type { Plan } from "@causey/engine/plan";
import type { WaterLevel } from "@causey/engine/water";
import { ChoiceField } from "../fields/choice-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { RowEditor, type Column } from "../fields/row-editor.tsx";
import { useSection } from "../fields/use-section.ts";
import { LevelsToFill } from "./levels-to-fill.tsx";
import { basisWords, choicesOf, roleWords } from "./level-words.ts";

const columns: readonly Column<WaterLevel>[] = [
  { key: "name", label: "Name", as: "text", required: true },
  { key: "role", label: "What it is", as: "choice", choices: choicesOf(roleWords) },
  { key: "basis", label: "How it came about", as: "choice", choices: choicesOf(basisWords) },
  { key: "z_m", label: "Level", as: "length" },
  { key: "datum", label: "On the datum", as: "text", required: true },
  { key: "source", label: "Source", as: "text", required: true },
  {
    key: "epoch",
    label: "Years it holds for",
    description: "Empty: not known, which is flagged.",
    as: "text",
  },
];

/**
 * Density that water of a kind has, for a plan that measured none [kg/m3]. Fresh and sea water at about 15 degrees
 * (UNESCO 1983, EOS-80: 999 and 1026 at a salinity of 35; from memory); brackish: half-way, a decision of this project.
 */
const DENSITY = { fresh: 1000, brackish: 1013, salt: 1026 } as const;

/** Named levels, each with its source and its years; predicted and recorded ones stay apart. */
export function LevelFields({ plan }: { readonly plan: Plan }) {
  const { value: levels, take } = useSection(plan, "levels");
  const flood = useSection(plan, "flood_level");
  const water = useSection(plan, "water");
  const density = useSection(plan, "water_kg_m3");
  return (
    <FieldGroup
      title="Levels"
      note="Only levels on the plan's own vertical datum can be used: a tide table's datum is not the land's."
    >
      <div className="fields">
        <ChoiceField
          label="Flood at which modules must stay put"
          value={flood.value ?? ""}
          choices={[
            { value: "", words: "none: a dry site" },
            ...levels.map((l) => ({ value: l.id, words: l.name })),
          ]}
          {...(flood.value === null && levels.length > 0
            ? { description: "With none, floating away is not looked at." }
            : {})}
          onTake={(id) => flood.take(id === "" ? null : id)}
        />
        <ChoiceField
          label="The water is"
          value={water.value.exposure}
          choices={[
            { value: "fresh", words: "fresh" },
            { value: "brackish", words: "brackish" },
            { value: "salt", words: "salt" },
          ]}
          onTake={(exposure) => {
            // A density that nobody changed follows the water; one that was measured stays.
            if (density.value === DENSITY[water.value.exposure]) density.take(DENSITY[exposure]);
            water.change({ exposure });
          }}
        />
        <NumberField
          label="Density of the water"
          unit="kg/m³"
          least={900}
          most={1300}
          value={density.value}
          onTake={density.take}
        />
      </div>
      <RowEditor<WaterLevel>
        noun="level"
        rows={levels}
        columns={columns}
        units={plan.units}
        titleOf={(l) => l.name}
        onTake={take}
      />
      <LevelsToFill plan={plan} levels={levels} onTake={take} />
    </FieldGroup>
  );
}
