import { Button, FileButton } from "@mantine/core";
import { rasterExtent } from "@causey/engine/site";
import type { TerrainLook } from "@causey/io/fresh";
import { ChoiceField } from "../fields/choice-field.tsx";
import { ProblemList } from "../frame/problem-list.tsx";
import type { TerrainFile } from "./use-terrain-look.ts";

interface Props {
  readonly terrain: TerrainFile;
  readonly onLook: (look: TerrainLook) => void;
}

/** The terrain file: which one, what it says of itself, and what is wrong with it. */
export function TerrainRow({ terrain, onLook }: Props) {
  const { look, refused, isReading, take, takeUnit } = terrain;
  const choose = async (file: File): Promise<void> => {
    const read = await take(file);
    if (read !== null) onLook(read);
  };
  return (
    <>
      <div className="file-row">
        <span>
          {look ? <LookWords look={look} /> : "A GeoTIFF or ESRI ASCII grid, with cells in metres."}
        </span>
        <FileButton accept=".tif,.tiff,.asc,.txt,image/tiff" onChange={(file) => file && void choose(file)}>
          {(props) => (
            <Button {...props} variant="default" size="compact-sm" loading={isReading}>
              {look ? "Choose another terrain" : "Choose a terrain"}
            </Button>
          )}
        </FileButton>
      </div>
      {look && (
        <div className="fields">
          <ChoiceField
            label="Heights in the file are in"
            value={look.unit}
            choices={[
              { value: "m", words: "metres" },
              { value: "ft", words: "international feet" },
            ]}
            onTake={(unit) => void takeUnit(unit)}
          />
        </div>
      )}
      <div aria-live="polite">{refused.length > 0 && <ProblemList problems={refused} />}</div>
    </>
  );
}

function LookWords({ look }: { readonly look: TerrainLook }) {
  const [west, south, east, north] = rasterExtent(look.raster);
  return (
    <>
      <b>{look.name}</b>: {Math.round(east - west)} by {Math.round(north - south)} m,{" "}
      {look.crs ? `EPSG:${look.crs.code} (${look.crs.name})` : "names no coordinate system"}
    </>
  );
}
