import type { Plan } from "@causey/engine/plan";
import type { Benchmark, CheckShot, Station } from "@causey/engine/survey";
import { DayField } from "../fields/day-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { freeId } from "../fields/free-id.ts";
import { RowEditor, type Column } from "../fields/row-editor.tsx";
import { useSection } from "../fields/use-section.ts";
import { YesField } from "../fields/yes-field.tsx";
import { ImportButton } from "./import-button.tsx";

const place = [
  { key: "x", label: "East on the grid", as: "number", unit: "m" },
  { key: "y", label: "North on the grid", as: "number", unit: "m" },
] as const;

const benchmarkColumns: readonly Column<Benchmark>[] = [
  { key: "name", label: "What it is", as: "text", required: true },
  ...place,
  { key: "z_m", label: "Height", as: "length" },
  { key: "datum", label: "On the datum", as: "text", required: true },
  { key: "source", label: "Source", as: "text", required: true },
];
const shotColumns: readonly Column<CheckShot>[] = [
  ...place,
  { key: "z_m", label: "Ground, measured", as: "length" },
  { key: "accuracy_m", label: "Accuracy claimed", as: "optional-length", empty: null },
  { key: "date", label: "Taken on", as: "day", optional: true },
];
const stationColumns: readonly Column<Station>[] = [
  ...place,
  { key: "ground_m", label: "Ground level", as: "length" },
  { key: "probe_m", label: "Probe sank", as: "optional-length", empty: null },
  { key: "water_m", label: "Water level", as: "optional-length", empty: null },
  { key: "date", label: "Read on", as: "day", optional: true },
];

/** Bench marks, heights taken on the ground itself, and stations along the line. */
export function SurveyFields({ plan }: { readonly plan: Plan }) {
  const { value: survey, change } = useSection(plan, "survey");
  const at = plan.starts[0] ?? { x: 0, y: 0 };
  const here = { x: at.x, y: at.y };
  const { units } = plan;
  return (
    <>
      <FieldGroup title="Survey">
        <div className="fields">
          <DayField
            label="Terrain flown or surveyed on"
            optional
            value={survey.date}
            onTake={(date) => change({ date })}
          />
          <LengthField
            label="Accuracy its maker states"
            size="small"
            optional
            units={units}
            value={survey.accuracy_m}
            onTake={(accuracy_m) => change({ accuracy_m })}
          />
          <YesField
            label="Lower the ground by what the check shots show"
            description="Inside habitats, where grass stands; everywhere when there are none."
            value={survey.correct_terrain}
            onTake={(correct_terrain) => change({ correct_terrain })}
          />
        </div>
      </FieldGroup>
      <FieldGroup
        title="Check shots"
        note="Heights taken on the ground itself, against which the terrain is held."
      >
        <ImportButton kind="check-shots" plan={plan} />
        <RowEditor<CheckShot>
          noun="check shot"
          rows={survey.check_shots}
          columns={shotColumns}
          units={units}
          titleOf={(s) => s.id}
          fresh={() => ({
            id: freeId("C", survey.check_shots),
            ...here,
            z_m: 0,
            accuracy_m: null,
            date: null,
          })}
          onTake={(check_shots) => change({ check_shots })}
        />
      </FieldGroup>
      <FieldGroup title="Stations" note="Where there is no terrain, the line is known from these alone.">
        <ImportButton kind="stations" plan={plan} />
        <RowEditor<Station>
          noun="station"
          rows={survey.stations}
          columns={stationColumns}
          units={units}
          titleOf={(s) => s.id}
          fresh={() => ({
            id: freeId("T", survey.stations),
            ...here,
            ground_m: 0,
            probe_m: null,
            water_m: null,
            date: null,
          })}
          onTake={(stations) => change({ stations })}
        />
      </FieldGroup>
      <FieldGroup title="Bench marks">
        <RowEditor<Benchmark>
          noun="bench mark"
          rows={survey.benchmarks}
          columns={benchmarkColumns}
          units={units}
          titleOf={(b) => b.name}
          fresh={() => {
            const id = freeId("BM", survey.benchmarks);
            return { id, name: id, ...here, z_m: 0, datum: plan.vertical_datum, source: "not told yet" };
          }}
          onTake={(benchmarks) => change({ benchmarks })}
        />
      </FieldGroup>
    </>
  );
}
