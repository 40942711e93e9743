import { Button, FileButton } from "@mantine/core";
import type { Plan } from "@causey/engine/plan";
import type { VectorLayer } from "@causey/io/layers";
import { useMemo, useState } from "react";
import { ChoiceField } from "../../fields/choice-field.tsx";
import { Dialog } from "../../frame/panel.tsx";
import { ProblemList } from "../../frame/problem-list.tsx";
import { plotDistances } from "../plot-distances.ts";
import { TakeOver } from "../take-over.tsx";
import { assumed, guessChoice, stillMissing, type LayerChoice } from "./layer-choice.ts";
import { LayerFields } from "./layer-fields.tsx";
import { layerTargets, type LayerTarget } from "./layer-kinds.ts";
import { LayerOutcome } from "./layer-outcome.tsx";
import { previewLayer } from "./layer-preview.ts";
import { firstFitting, layerWords } from "./layer-words.ts";
import { useLayerFile } from "./use-layer-file.ts";
import { usePlacedLayer } from "./use-placed-layer.ts";

interface Props {
  readonly target: LayerTarget;
  readonly plan: Plan;
  readonly onClose: () => void;
}

const ENDINGS = ".zip,.kml,.kmz,.gpx,.gpkg,.geojson,.json";

interface Chosen {
  readonly at: number;
  readonly choice: LayerChoice;
}

/** File, layer, system, fields, a look at what would come of it, and only then the change of the plan. */
export default function LayerImportDialog({ target, plan, onClose }: Props) {
  const { file, refused, isReading, take } = useLayerFile(plan);
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const { title, noun } = layerTargets[target];

  const layer = file === null || chosen === null ? null : (file.layers[chosen.at] ?? null);
  const choice = layer === null ? null : chosen!.choice;
  const crs = file?.crs ?? null;
  const open = layer && choice && crs ? { layer, choice, crs } : null;
  const placing = usePlacedLayer(layer, crs, open && assumed(open.layer, open.choice, open.crs));
  const missing = open && stillMissing(target, open.layer, open.choice, open.crs);
  const preview = useMemo(
    () =>
      choice === null || missing !== null || !placing?.layer
        ? null
        : previewLayer(target, placing.layer, choice, plan),
    [target, placing, choice, missing, plan],
  );

  const guess = (read: VectorLayer): LayerChoice => guessChoice(target, read, { ...plotDistances(plan) });
  const choose = async (picked: File): Promise<void> => {
    setChosen(null);
    const read = await take(picked);
    if (read === null || read.layers.length === 0) return;
    const at = firstFitting(read.layers, layerTargets[target].shape);
    setChosen({ at, choice: guess(read.layers[at]!) });
  };
  return (
    <Dialog title={title} closeWords="Close without a change" onClose={onClose}>
      <div className="file-row">
        <span>
          {file ? <b>{file.name}</b> : "A zipped shapefile, or a GeoPackage, KML, KMZ, GPX or GeoJSON file."}
        </span>
        <FileButton accept={ENDINGS} onChange={(picked) => picked && void choose(picked)}>
          {(props) => (
            <Button {...props} variant="default" size="compact-sm" loading={isReading}>
              {file ? "Choose another file" : "Choose a file"}
            </Button>
          )}
        </FileButton>
      </div>
      {file && file.layers.length > 1 && chosen && (
        <div className="fields">
          <ChoiceField
            label="Layer"
            value={String(chosen.at)}
            choices={file.layers.map((l, i) => ({ value: String(i), words: layerWords(l) }))}
            onTake={(at) => setChosen({ at: Number(at), choice: guess(file.layers[Number(at)]!) })}
          />
        </div>
      )}
      {open && (
        <LayerFields
          target={target}
          {...open}
          units={plan.units}
          onTake={(next) => setChosen({ at: chosen!.at, choice: next })}
        />
      )}
      <div aria-live="polite">
        {refused.length > 0 && <ProblemList problems={refused} />}
        {missing && <p className="quiet">{missing}</p>}
        {file && (
          <LayerOutcome
            preview={preview}
            problems={[...file.warnings, ...(placing?.problems ?? [])]}
            noun={noun}
          />
        )}
      </div>
      <TakeOver edit={preview?.edit ?? null} count={preview?.count ?? 0} noun={noun} onClose={onClose} />
    </Dialog>
  );
}
