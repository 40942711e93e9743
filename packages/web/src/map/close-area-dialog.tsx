import { Button, NumberInput, TextInput } from "@mantine/core";
import { rectangle } from "@causey/engine/site";
import { feet, metres, type UnitSystem } from "@causey/engine/units";
import { useState } from "react";
import { Dialog } from "../frame/panel.tsx";
import type { XY } from "./view.ts";

export type AreaRequest =
  { readonly by: "outline"; readonly ring: readonly XY[] } | { readonly by: "numbers"; readonly middle: XY };

interface Props {
  readonly request: AreaRequest;
  readonly suggestedName: string;
  readonly units: UnitSystem;
  readonly onClose: (name: string, ring: readonly XY[]) => void;
  readonly onLeave: () => void;
}

const startSide = { us: 60, metric: 20 } as const;

/** Asks for the name of an area that is to be closed; by numbers, also for its middle and its sides. */
export default function CloseAreaDialog({ request, suggestedName, units, onClose, onLeave }: Props) {
  const [name, setName] = useState(suggestedName);
  const [box, setBox] = useState({
    east: request.by === "numbers" ? Math.round(request.middle[0]) : 0,
    north: request.by === "numbers" ? Math.round(request.middle[1]) : 0,
    wide: startSide[units] as number,
    high: startSide[units] as number,
  });
  const side = (v: number): number => (units === "us" ? feet(v) : metres(v));
  const isWhole = name.trim() !== "" && (request.by === "outline" || (box.wide > 0 && box.high > 0));
  const submit = (event: React.FormEvent): void => {
    event.preventDefault();
    if (!isWhole) return;
    const ring =
      request.by === "outline"
        ? request.ring
        : rectangle(box.east, box.north, 0, side(box.high), side(box.wide));
    onClose(name.trim(), ring);
  };
  return (
    <Dialog title="Close an area" closeWords="Leave" onClose={onLeave}>
      <form onSubmit={submit} className="form">
        <TextInput
          label="Name"
          description="Stands on the map and in the notes of the layout."
          value={name}
          onChange={(e) => setName(e.currentTarget.value)}
          data-autofocus
          required
        />
        {request.by === "numbers" && <BoxFields box={box} units={units} onChange={setBox} />}
        <p className="quiet">No part may stand in it or cross it. You can take it away again.</p>
        <div className="form-buttons">
          <Button type="submit" disabled={!isWhole}>
            Close this area
          </Button>
          <Button variant="default" onClick={onLeave}>
            Leave
          </Button>
        </div>
      </form>
    </Dialog>
  );
}

interface Box {
  readonly east: number;
  readonly north: number;
  readonly wide: number;
  readonly high: number;
}

interface BoxProps {
  readonly box: Box;
  readonly units: UnitSystem;
  readonly onChange: (box: Box) => void;
}

/** Middle on the site's grid, always in metres; sides in the chosen unit. */
function BoxFields({ box, units, onChange }: BoxProps) {
  const unit = units === "us" ? "ft" : "m";
  const field = (key: keyof Box, label: string, least?: number) => (
    <NumberInput
      label={label}
      value={box[key]}
      onChange={(v) => onChange({ ...box, [key]: typeof v === "number" ? v : Number(v) || 0 })}
      {...(least === undefined ? {} : { min: least })}
      required
    />
  );
  return (
    <div className="form-pairs">
      {field("east", "Middle, east on the grid (m)")}
      {field("north", "Middle, north on the grid (m)")}
      {field("wide", `Side west to east (${unit})`, 0.1)}
      {field("high", `Side south to north (${unit})`, 0.1)}
    </div>
  );
}
