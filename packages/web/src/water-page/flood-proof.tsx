import type { FloodProof as Flood, Plan } from "@causey/engine/plan";
import { KG_PER_LB, M_PER_FT } from "@causey/engine/units";
import { ChoiceField } from "../fields/choice-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { YesField } from "../fields/yes-field.tsx";

const stakeWords: readonly { readonly value: Flood["stakes"]; readonly words: string }[] = [
  { value: "fresh", words: "just driven" },
  { value: "set", words: "set for weeks" },
  { value: "loosened", words: "worked loose by floods" },
];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** What a flood brings besides its level. What is left empty is not known, and its checks say so. */
export function FloodProof({ plan }: { readonly plan: Plan }) {
  const { value: proof, change } = useSection(plan, "proof");
  const { flood } = proof;
  const take = (some: Partial<Flood>): void => change({ flood: { ...flood, ...some } });
  const { units } = plan;
  const isUs = units === "us";
  return (
    <FieldGroup
      title="What a flood brings"
      note="Current, waves and what drifts push on a walkway that still water would only lift. Empty: not told."
    >
      <LevelChoice plan={plan} chosen={flood.levels} onTake={(levels) => take({ levels })} />
      <div className="fields">
        <NumberField
          label="Speed of the water"
          unit={isUs ? "ft/s" : "m/s"}
          scale={isUs ? 1 / M_PER_FT : 1}
          decimals={2}
          least={0}
          optional
          empty="both bounds are told"
          value={flood.speed_m_s}
          onTake={(speed_m_s) => take({ speed_m_s })}
        />
        <TextField
          label="Where that speed is from"
          value={flood.speed_source}
          onTake={(speed_source) => take({ speed_source })}
        />
        <NumberField
          label="Runs to, clockwise from grid north"
          unit="degrees"
          optional
          empty="square to every part"
          value={flood.flow_deg}
          onTake={(flow_deg) => take({ flow_deg })}
        />
        <ChoiceField
          label="How the stakes stand"
          value={flood.stakes}
          choices={stakeWords}
          onTake={(stakes) => take({ stakes })}
        />
        <NumberField
          label="A drifting log or board"
          unit={isUs ? "lb" : "kg"}
          scale={isUs ? 1 / KG_PER_LB : 1}
          decimals={1}
          least={0.1}
          optional
          empty="none told"
          value={flood.log_kg}
          onTake={(log_kg) => take({ log_kg })}
        />
      </div>
      <Waves flood={flood} units={units} onTake={take} />
      <Cold flood={flood} units={units} onTake={take} />
    </FieldGroup>
  );
}

function LevelChoice({
  plan,
  chosen,
  onTake,
}: {
  readonly plan: Plan;
  readonly chosen: readonly string[];
  readonly onTake: (levels: readonly string[]) => void;
}) {
  const others = plan.levels.filter((l) => l.id !== plan.flood_level);
  if (others.length === 0) return null;
  return (
    <fieldset className="fields fields-checks">
      <legend className="unseen">Also held at these levels</legend>
      {others.map((level) => (
        <YesField
          key={level.id}
          label={`Also held at ${level.name}`}
          value={chosen.includes(level.id)}
          onTake={(on) => onTake(on ? [...chosen, level.id] : chosen.filter((id) => id !== level.id))}
        />
      ))}
    </fieldset>
  );
}

interface Part {
  readonly flood: Flood;
  readonly units: Plan["units"];
  readonly onTake: (some: Partial<Flood>) => void;
}

function Waves({ flood, units, onTake }: Part) {
  const { wave, wrack } = flood;
  return (
    <div className="fields">
      <YesField
        label="Small waves reach the walkway"
        value={wave !== null}
        onTake={(on) => onTake({ wave: on ? { height_m: 0.1, period_s: 1.5 } : null })}
      />
      {wave && (
        <>
          <LengthField
            label="Wave, trough to crest"
            units={units}
            size="small"
            least_m={0.01}
            value={wave.height_m}
            onTake={(height_m) => onTake({ wave: { ...wave, height_m } })}
          />
          <NumberField
            label="From crest to crest"
            unit="s"
            least={0.3}
            value={wave.period_s}
            onTake={(period_s) => onTake({ wave: { ...wave, period_s } })}
          />
        </>
      )}
      <YesField
        label="Wrack lodges on the line"
        value={wrack !== null}
        onTake={(on) => onTake({ wrack: on ? { thickness_m: 0.1, clogged_share: 0.5 } : null })}
      />
      {wrack && (
        <>
          <LengthField
            label="Thickness of the wrack"
            units={units}
            size="small"
            least_m={0.01}
            value={wrack.thickness_m}
            onTake={(thickness_m) => onTake({ wrack: { ...wrack, thickness_m } })}
          />
          <NumberField
            label="Openings of the deck that it clogs"
            unit="%"
            scale={100}
            least={0}
            most={100}
            value={wrack.clogged_share}
            onTake={(clogged_share) => onTake({ wrack: { ...wrack, clogged_share } })}
          />
        </>
      )}
    </div>
  );
}

function Cold({ flood, units, onTake }: Part) {
  const { ice_months: months } = flood;
  return (
    <div className="fields">
      <YesField
        label="The months with ice are known"
        description="Known and none ticked: no ice."
        value={months !== null}
        onTake={(on) => onTake({ ice_months: on ? [] : null })}
      />
      {months && (
        <fieldset className="fields fields-checks">
          <legend className="unseen">Months with ice</legend>
          {MONTHS.map((name, i) => (
            <YesField
              key={name}
              label={name}
              name={`Ice in ${name}`}
              value={months.includes(i + 1)}
              onTake={(on) =>
                onTake({
                  ice_months: on
                    ? [...months, i + 1].sort((a, b) => a - b)
                    : months.filter((m) => m !== i + 1),
                })
              }
            />
          ))}
        </fieldset>
      )}
      <LengthField
        label="Thickness of the ice"
        units={units}
        size="small"
        optional
        least_m={0.001}
        value={flood.ice_m}
        onTake={(ice_m) => onTake({ ice_m })}
      />
      <LengthField
        label="Depth that frost reaches"
        units={units}
        size="small"
        optional
        least_m={0}
        value={flood.frost_m}
        onTake={(frost_m) => onTake({ frost_m })}
      />
    </div>
  );
}
