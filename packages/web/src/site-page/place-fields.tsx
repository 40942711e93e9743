import type { Plan } from "@causey/engine/plan";
import type { Plot, Start } from "@causey/engine/site";
import { useDesk } from "../desk/desk.ts";
import { useStore } from "../desk/store.ts";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { GridPlace } from "../fields/grid-place.tsx";
import { freeId } from "../fields/free-id.ts";
import { RowEditor, type Column } from "../fields/row-editor.tsx";
import { useSection } from "../fields/use-section.ts";
import { freshPlace } from "./fresh-place.ts";
import { LayerImportButton } from "./layer-import/layer-import-button.tsx";
import { plotDistances } from "./plot-distances.ts";

const startColumns: readonly Column<Start>[] = [{ key: "name", label: "Name", as: "text", required: true }];
const plotColumns: readonly Column<Plot>[] = [
  { key: "name", label: "Name", as: "text", required: true },
  { key: "keep_off_m", label: "Keep off, all round", as: "length", least: 0 },
  {
    key: "reach_m",
    label: "Reached from",
    description: "Farthest beyond the keep-off line.",
    as: "length",
    least: 0.1,
  },
  {
    key: "arrive_from",
    label: "Arrive from",
    as: "choice",
    choices: [
      { value: "", words: "any side" },
      { value: "north", words: "the north" },
      { value: "east", words: "the east" },
      { value: "south", words: "the south" },
      { value: "west", words: "the west" },
    ],
  },
];

/** Where the walkway begins and where it must lead. */
export function PlaceFields({ plan }: { readonly plan: Plan }) {
  const starts = useSection(plan, "starts");
  const plots = useSection(plan, "plots");
  const terrain = useStore(useDesk().terrain, (t) => t.picture?.extent ?? null);
  const middle = plan.starts[0] ?? { x: 0, y: 0 };
  return (
    <>
      <FieldGroup title="Starts" note="On firm ground, where the walkway begins.">
        <LayerImportButton target="starts" plan={plan} />
        <RowEditor<Start>
          noun="start"
          rows={starts.value}
          columns={startColumns}
          units={plan.units}
          titleOf={(s) => s.name}
          afterFirst={placeOf(plan.crs)}
          fresh={() => {
            const id = freeId("S", plan.starts);
            return { id, name: `Start ${id.slice(1)}`, x: middle.x, y: middle.y };
          }}
          onTake={starts.take}
        />
      </FieldGroup>
      <FieldGroup title="Plots" note="They can be dragged on the map too.">
        <LayerImportButton target="plots" plan={plan} />
        <RowEditor<Plot>
          noun="plot"
          rows={plots.value}
          columns={plotColumns}
          units={plan.units}
          titleOf={(p) => p.name}
          afterFirst={placeOf(plan.crs)}
          fresh={() => {
            const id = freeId("P", plan.plots);
            return {
              id,
              name: `Plot ${id.slice(1)}`,
              ...freshPlace(plan, terrain),
              ...plotDistances(plan),
            };
          }}
          onTake={(rows) => plots.take(rows.map(withoutEmptySide))}
        />
      </FieldGroup>
    </>
  );
}

/** East and north of a row, changed together. */
const placeOf =
  (crs: Plan["crs"]) =>
  <T extends { readonly x: number; readonly y: number }>(row: T, take: (row: T) => void) => (
    <GridPlace
      crs={crs}
      place={[row.x, row.y]}
      onTake={(place) => place && take({ ...row, x: place[0], y: place[1] })}
    />
  );

/** "Any side" is kept by leaving the side out. */
function withoutEmptySide(plot: Plot): Plot {
  const { arrive_from, ...rest } = plot;
  return (arrive_from as string | undefined) ? plot : rest;
}
