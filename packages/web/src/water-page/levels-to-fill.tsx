import { Button } from "@mantine/core";
import type { Plan } from "@causey/engine/plan";
import type { LevelRole, WaterLevel } from "@causey/engine/water";
import { useState } from "react";
import { ChoiceField } from "../fields/choice-field.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { choicesOf, roleWords } from "./level-words.ts";
import { levelOf, readyLevels, withHeight, type ReadyLevel } from "./ready-levels.ts";

interface Props {
  readonly plan: Plan;
  readonly levels: readonly WaterLevel[];
  readonly onTake: (levels: readonly WaterLevel[]) => void;
}

/** Levels by name that still need a height; only a typed height makes one part of the plan. */
export function LevelsToFill({ plan, levels, onTake }: Props) {
  const [isOther, setOther] = useState(false);
  const ready = readyLevels(levels);
  const put = (level: ReadyLevel, z_m: number | null): void => {
    if (z_m !== null) onTake([...levels, withHeight(level, z_m, levels, plan.vertical_datum)]);
  };
  const description = `On ${plan.vertical_datum}. Empty: not in the plan.`;
  return (
    <>
      {ready.length > 0 && (
        <fieldset className="row-fields">
          <legend>Still without a height</legend>
          <div className="fields">
            {ready.map((level) => (
              <LengthField
                key={level.name}
                label={level.name}
                description={description}
                optional
                units={plan.units}
                value={null}
                onTake={(z_m) => put(level, z_m)}
              />
            ))}
          </div>
        </fieldset>
      )}
      {isOther ? (
        <AnotherLevel
          {...{ plan, levels, description }}
          onTake={(level, z_m) => {
            put(level, z_m);
            setOther(false);
          }}
        />
      ) : (
        <Button variant="default" onClick={() => setOther(true)}>
          Add a level
        </Button>
      )}
    </>
  );
}

interface AnotherProps {
  readonly plan: Plan;
  readonly levels: readonly WaterLevel[];
  readonly description: string;
  readonly onTake: (level: ReadyLevel, z_m: number) => void;
}

/** A level of any kind, called by what it is or by a name of its own. */
function AnotherLevel({ plan, levels, description, onTake }: AnotherProps) {
  const [role, setRole] = useState<LevelRole>("mhws");
  const [name, setName] = useState("");
  const level = levelOf(role, name, levels);
  return (
    <fieldset className="row-fields">
      <legend>Another level</legend>
      <div className="fields">
        <ChoiceField<LevelRole>
          label="What the new level is"
          value={role}
          choices={choicesOf(roleWords)}
          onTake={setRole}
        />
        <TextField
          live
          label="Name of the new level"
          description={`Empty: ${levelOf(role, "", levels).name}.`}
          value={name}
          onTake={setName}
        />
        <LengthField
          label={`Height of ${level.name}`}
          description={description}
          optional
          units={plan.units}
          value={null}
          onTake={(z_m) => z_m !== null && onTake(level, z_m)}
        />
      </div>
    </fieldset>
  );
}
