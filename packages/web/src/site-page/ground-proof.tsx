import { tables } from "@causey/data/tables";
import type { GroundProof as Ground, Plan, SoftLayer } from "@causey/engine/plan";
import { ChoiceField } from "../fields/choice-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { YesField } from "../fields/yes-field.tsx";

const NOT_CHOSEN = "";
const FRESH_LAYER: SoftLayer = {
  thickness_m: 1,
  compression: 0.3,
  creep_share: 0.06,
  pressure_kpa: 5,
  source: "assumed, peat",
};

/** How strengths scatter, and how the ground settles under what lies on it for years. */
export function GroundProof({ plan }: { readonly plan: Plan }) {
  const { value: proof, change } = useSection(plan, "proof");
  const { ground } = proof;
  const take = (some: Partial<Ground>): void => change({ ground: { ...ground, ...some } });
  const rows = [...tables.ground.terrains, ...tables.ground.muskegs];
  return (
    <FieldGroup
      title="Scatter and settling of the ground"
      note="Readings scatter: the chance that a joint gives way is worked out from them and from the spread expected before any reading."
    >
      <div className="fields">
        <NumberField
          label="Chance of a joint giving way that is accepted"
          unit="%"
          scale={100}
          decimals={3}
          least={0.001}
          most={50}
          value={ground.chance}
          onTake={(chance) => take({ chance })}
        />
        <NumberField
          label="Spread of strength before any reading"
          description="Standard deviation of its logarithm: 0.4 is a third up or down."
          least={0.05}
          most={2}
          value={ground.prior_spread}
          onTake={(prior_spread) => take({ prior_spread })}
        />
        <LengthField
          label="Strengths are alike within"
          units={plan.units}
          least_m={0.5}
          value={ground.alike_m}
          onTake={(alike_m) => take({ alike_m })}
        />
        <LengthField
          label="Mat of roots over weaker mud"
          units={plan.units}
          size="small"
          optional
          empty="none counted"
          least_m={0.01}
          value={ground.root_mat_m}
          onTake={(root_mat_m) => take({ root_mat_m })}
        />
        <ChoiceField
          label="How the ground sinks under pressure"
          value={ground.sinkage ?? NOT_CHOSEN}
          choices={[
            { value: NOT_CHOSEN, words: "not told" },
            ...rows.map(({ id, name }) => ({ value: id, words: name })),
          ]}
          onTake={(id) => take({ sinkage: id === NOT_CHOSEN ? null : id })}
        />
      </div>
      <fieldset className="fields fields-checks">
        <legend className="unseen">Plots that must not feel who stands there</legend>
        {plan.plots.map((plot) => (
          <YesField
            key={plot.id}
            label={`${plot.name} must not feel who stands on the last support`}
            value={ground.sensitive_plots.includes(plot.id)}
            onTake={(on) =>
              take({
                sensitive_plots: on
                  ? [...ground.sensitive_plots, plot.id]
                  : ground.sensitive_plots.filter((id) => id !== plot.id),
              })
            }
          />
        ))}
      </fieldset>
      <div className="fields">
        <YesField
          label="A soft layer settles under it for years"
          value={ground.soft_layer !== null}
          onTake={(on) => take({ soft_layer: on ? FRESH_LAYER : null })}
        />
        {ground.soft_layer && (
          <LayerFields
            layer={ground.soft_layer}
            units={plan.units}
            onTake={(soft_layer) => take({ soft_layer })}
          />
        )}
      </div>
    </FieldGroup>
  );
}

function LayerFields({
  layer,
  units,
  onTake,
}: {
  readonly layer: SoftLayer;
  readonly units: Plan["units"];
  readonly onTake: (layer: SoftLayer) => void;
}) {
  return (
    <>
      <LengthField
        label="Thickness of the soft layer"
        units={units}
        least_m={0.05}
        value={layer.thickness_m}
        onTake={(thickness_m) => onTake({ ...layer, thickness_m })}
      />
      <NumberField
        label="Compression Cc / (1 + e0)"
        least={0.001}
        value={layer.compression}
        onTake={(compression) => onTake({ ...layer, compression })}
      />
      <NumberField
        label="Creep over compression"
        description="0.06 for peat, 0.04 for clay: from memory, confirm."
        least={0}
        value={layer.creep_share}
        onTake={(creep_share) => onTake({ ...layer, creep_share })}
      />
      <NumberField
        label="Pressure in its middle before anything is laid"
        unit="kPa"
        least={0.1}
        value={layer.pressure_kpa}
        onTake={(pressure_kpa) => onTake({ ...layer, pressure_kpa })}
      />
      <TextField
        label="Source of the soft layer"
        required
        value={layer.source}
        onTake={(source) => onTake({ ...layer, source })}
      />
    </>
  );
}
