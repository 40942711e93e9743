import { Button } from "@mantine/core";
import type { Plan } from "@causey/engine/plan";
import type { WaterLevel } from "@causey/engine/water";
import { useState } from "react";
import { LengthField } from "../fields/length-field.tsx";
import { otherLevel, readyLevels, withHeight } from "./ready-levels.ts";

interface Props {
  readonly plan: Plan;
  readonly levels: readonly WaterLevel[];
  readonly onTake: (levels: readonly WaterLevel[]) => void;
}

/** Levels by name that still need a height; only a typed height makes one part of the plan. */
export function LevelsToFill({ plan, levels, onTake }: Props) {
  const [isOther, setOther] = useState(false);
  const rows = [...readyLevels(levels), ...(isOther ? [otherLevel(levels)] : [])];
  return (
    <>
      {rows.length > 0 && (
        <fieldset className="row-fields">
          <legend>Still without a height</legend>
          <div className="fields">
            {rows.map((level) => (
              <LengthField
                key={level.name}
                label={level.name}
                description={`On ${plan.vertical_datum}. Empty: not in the plan.`}
                optional
                units={plan.units}
                value={null}
                onTake={(z_m) => {
                  if (z_m === null) return;
                  onTake([...levels, withHeight(level, z_m, levels, plan.vertical_datum)]);
                  if (level.role === "other") setOther(false);
                }}
              />
            ))}
          </div>
        </fieldset>
      )}
      {!isOther && (
        <Button variant="default" onClick={() => setOther(true)}>
          Add a level
        </Button>
      )}
    </>
  );
}
