import { Button, FileButton } from "@mantine/core";
import type { TerrainChoice } from "@causey/engine/plan";
import type { PlanSnapshot } from "../api/types.ts";
import { ChoiceField } from "../fields/choice-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { YesField } from "../fields/yes-field.tsx";
import { ProblemList } from "../frame/problem-list.tsx";
import { PointColumnFields } from "./point-column-fields.tsx";
import { useLayFile } from "./use-lay-file.ts";

const kinds = [
  { value: "grid", words: "a grid of heights (GeoTIFF, ASCII grid)" },
  { value: "points", words: "survey points (CSV)" },
  { value: "stations", words: "stations typed below: no file" },
] as const;

/** Where the ground's heights come from. */
export function GroundFields({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const { plan } = snapshot;
  const { value: terrain, take } = useSection(plan, "terrain");
  const file = useLayFile(snapshot.id);
  return (
    <FieldGroup title="Ground" note="Lidar reads high in dense grass: check shots below say by how much.">
      <div className="fields">
        <ChoiceField
          label="Heights come from"
          value={terrain.kind}
          choices={kinds}
          onTake={(kind) => take(ofKind(terrain, kind))}
        />
        <TextField
          required
          label="Vertical datum of the heights"
          value={terrain.datum}
          onTake={(datum) => take({ ...terrain, datum })}
        />
        {terrain.kind !== "stations" && (
          <ChoiceField
            label="Heights in the file are in"
            value={terrain.unit}
            choices={[
              { value: "m", words: "metres" },
              { value: "ft", words: "international feet" },
              ...(terrain.kind === "points" ? [{ value: "us-ft", words: "US survey feet" } as const] : []),
            ]}
            onTake={(unit) => take({ ...terrain, unit } as TerrainChoice)}
          />
        )}
        {terrain.kind !== "grid" && (
          <LengthField
            label="Cell of the grid made of them"
            units={plan.units}
            least_m={0.1}
            value={terrain.cell_m}
            onTake={(cell_m) => take({ ...terrain, cell_m })}
          />
        )}
        {terrain.kind === "points" && (
          <LengthField
            label="Farthest apart, to read between"
            units={plan.units}
            least_m={0.5}
            value={terrain.longest_edge_m}
            onTake={(longest_edge_m) => take({ ...terrain, longest_edge_m })}
          />
        )}
        {terrain.kind === "stations" && (
          <LengthField
            label="Ground is known so far beside them"
            units={plan.units}
            least_m={0.5}
            value={terrain.reach_m}
            onTake={(reach_m) => take({ ...terrain, reach_m })}
          />
        )}
        {terrain.kind === "grid" && "epsg" in plan.crs && (
          <YesField
            label={`I have checked that the file lies in EPSG:${plan.crs.epsg}`}
            value={terrain.crs_confirmed === true}
            onTake={(yes) => {
              const { crs_confirmed: _, ...rest } = terrain;
              take(yes ? { ...rest, crs_confirmed: true } : rest);
            }}
          />
        )}
      </div>
      {terrain.kind === "points" && <PointColumnFields terrain={terrain} onTake={(next) => take(next)} />}
      {terrain.kind !== "stations" && (
        <div className="file-row">
          <span>
            File: <b>{terrain.file}</b>
          </span>
          <FileButton
            onChange={(chosen) => {
              if (chosen) void file.lay(chosen, (entry) => take({ ...terrain, file: entry.name }));
            }}
          >
            {(props) => (
              <Button {...props} variant="default" size="compact-sm" loading={file.isSending}>
                Take another file
              </Button>
            )}
          </FileButton>
        </div>
      )}
      <div aria-live="polite">
        {file.broken !== null && <p className="plans-broken">{file.broken}</p>}
        {file.problems.length > 0 && <ProblemList problems={file.problems} />}
      </div>
    </FieldGroup>
  );
}

/** The same ground said in another way; what the other way cannot carry over starts at common values. */
function ofKind(terrain: TerrainChoice, kind: TerrainChoice["kind"]): TerrainChoice {
  const { datum } = terrain;
  const file = terrain.kind === "stations" ? "terrain.tif" : terrain.file;
  const unit = terrain.kind === "stations" ? "m" : terrain.unit;
  if (kind === "grid") return { kind, file, unit: unit === "m" ? "m" : "ft", datum };
  if (kind === "stations") return { kind, datum, cell_m: 0.5, reach_m: 10 };
  return {
    kind,
    file,
    columns: { id: null, x: "E", y: "N", z: "Z", code: null, accuracy: null, date: null },
    unit,
    decimal: "point",
    date_order: "ymd",
    datum,
    cell_m: 1,
    longest_edge_m: 30,
  };
}
