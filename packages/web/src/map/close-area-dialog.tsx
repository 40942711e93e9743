import { Button, NumberInput, TextInput } from "@mantine/core";
import { rectangle } from "@causey/engine/site";
import { feet, metres, type UnitSystem } from "@causey/engine/units";
import { useState } from "react";
import { ChoiceField } from "../fields/choice-field.tsx";
import { MonthDayField } from "../fields/month-day-field.tsx";
import { Dialog } from "../frame/panel.tsx";
import type { AreaAnswer, DrawnUse } from "./area-draft.ts";
import type { XY } from "./view.ts";
import { zoneUseWords } from "./zone-style.ts";

export type AreaRequest =
  { readonly by: "outline"; readonly ring: readonly XY[] } | { readonly by: "numbers"; readonly middle: XY };

interface Props {
  readonly request: AreaRequest;
  readonly nameFor: (use: DrawnUse) => string;
  readonly units: UnitSystem;
  readonly onClose: (answer: AreaAnswer, ring: readonly XY[]) => void;
  readonly onLeave: () => void;
}

const startSide = { us: 60, metric: 20 } as const;

/** What each rule makes of the area, as the search and the checks take it. */
const effects: Readonly<Record<DrawnUse, string>> = {
  closed: "No part may stand in it or cross it.",
  "seasonal-closure": "No part may lie in it when parts are laid between these days.",
  pool: "Water: parts may cross it, counted as a crossing; supports stand only where their kind may.",
  channel: "Water: parts may cross it, counted as a crossing; supports stand only where their kind may.",
  habitat: "Parts may cross it. How much harm a square metre counts is set in the lists of the page Site.",
  "soft-ground": "Supports stand in it only where their kind may.",
  buffer: "No part may stand in it or cross it: room around something to be kept clear.",
};
const uses = Object.keys(effects) as DrawnUse[];

/** Asks what a drawn area is, and for its name; by numbers, also for its middle and its sides. */
export default function CloseAreaDialog({ request, nameFor, units, onClose, onLeave }: Props) {
  const [use, setUse] = useState<DrawnUse>("closed");
  const [typed, setTyped] = useState<string | null>(null);
  const [days, setDays] = useState({ from: "", to: "" });
  const [box, setBox] = useState({
    east: request.by === "numbers" ? Math.round(request.middle[0]) : 0,
    north: request.by === "numbers" ? Math.round(request.middle[1]) : 0,
    wide: startSide[units] as number,
    high: startSide[units] as number,
  });
  const name = typed ?? nameFor(use);
  const side = (v: number): number => (units === "us" ? feet(v) : metres(v));
  const isSeason = use === "seasonal-closure";
  const isWhole = name.trim() !== "" && (request.by === "outline" || (box.wide > 0 && box.high > 0));
  // A day is taken over when its field is left, which may be by the press on the button itself.
  const lacksDays = isSeason && (days.from === "" || days.to === "");
  const submit = (event: React.FormEvent): void => {
    event.preventDefault();
    if (!isWhole || lacksDays) return;
    const ring =
      request.by === "outline"
        ? request.ring
        : rectangle(box.east, box.north, 0, side(box.high), side(box.wide));
    onClose({ name: name.trim(), use, ...(isSeason ? days : {}) }, ring);
  };
  return (
    <Dialog title="Close an area" closeWords="Leave" onClose={onLeave}>
      <form onSubmit={submit} className="form">
        <TextInput
          label="Name"
          description="Stands on the map and in the notes of the layout."
          value={name}
          onChange={(e) => setTyped(e.currentTarget.value)}
          data-autofocus
          required
        />
        <ChoiceField
          label="What it is"
          value={use}
          choices={uses.map((value) => ({ value, words: zoneUseWords[value] }))}
          onTake={setUse}
        />
        {isSeason && (
          <div className="form-pairs">
            <MonthDayField
              label="First day"
              required
              value={days.from}
              onTake={(from) => setDays({ ...days, from })}
            />
            <MonthDayField
              label="Last day"
              required
              value={days.to}
              onTake={(to) => setDays({ ...days, to })}
            />
          </div>
        )}
        {request.by === "numbers" && <BoxFields box={box} units={units} onChange={setBox} />}
        <p className="quiet">{effects[use]} You can take it away again.</p>
        <div className="form-buttons">
          <Button type="submit" disabled={!isWhole}>
            {use === "closed" ? "Close this area" : "Keep this area"}
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
