import { TextInput } from "@mantine/core";
import type { PlanCrs } from "@causey/io/crs";
import { useState } from "react";
import { ChoiceField } from "./choice-field.tsx";
import { looksLikeDegrees, readPlace, splitPasted, type PlaceForm, type PlaceTexts } from "./place-pair.ts";
import { useEarth } from "./use-earth.ts";

interface Props {
  /** System of the plan; degrees can be typed where its place on the earth is known. */
  readonly crs: PlanCrs | null;
  /** East and north on the grid [m]; null = not told yet. */
  readonly place: readonly [number, number] | null;
  /** What stands in the empty fields; left out where the place must be told. */
  readonly empty?: string;
  /** Before "east on the grid": "Start". */
  readonly noun?: string;
  readonly onTake: (place: readonly [number, number] | null) => void;
  /** Whether what was typed is no place, and stays in the fields with its fault. */
  readonly onUnread?: (isUnread: boolean) => void;
}

type Faults = readonly [string | null, string | null];
const SOUND: Faults = [null, null];
const NOTHING: PlaceTexts = ["", ""];

const shownOf = (place: Props["place"]): PlaceTexts =>
  place === null ? NOTHING : [numberWords(place[0]), numberWords(place[1])];
const numberWords = (value: number): string => String(Number(value.toPrecision(12)));

/**
 * A place as two numbers that belong together: they are taken over when both fields are left, or with Enter, so that no
 * place in between is ever tried. Latitude and longitude are turned into the plan's grid.
 */
export function GridPlace({ crs, place, empty, noun, onTake, onUnread }: Props) {
  const shown = shownOf(place);
  const [form, setForm] = useState<PlaceForm>("grid");
  const [texts, setTexts] = useState(shown);
  const [faults, setFaults] = useState<Faults>(SOUND);
  const [note, setNote] = useState({ of: "", words: "" });
  const [follows, setFollows] = useState(shown.join(" "));
  if (follows !== shown.join(" ")) {
    setFollows(shown.join(" "));
    setTexts(shown);
    setForm("grid");
    setFaults(SOUND);
  }
  const earth = useEarth(crs !== null && "epsg" in crs && form === "degrees" ? crs.epsg : null);
  const epsg = crs !== null && "epsg" in crs ? crs.epsg : null;
  const degrees = epsg !== null && form === "degrees";

  const change = (at: 0 | 1, text: string): void => {
    setTexts(at === 0 ? [text, texts[1]] : [texts[0], text]);
    setFaults(SOUND);
  };
  const refuse = (next: Faults): void => {
    setFaults(next);
    onUnread?.(true);
  };
  const paste = (event: React.ClipboardEvent): void => {
    const both = splitPasted(event.clipboardData.getData("text"));
    if (both === null) return;
    event.preventDefault();
    setTexts(both);
    setFaults(SOUND);
  };
  const commit = (): void => {
    if (degrees ? texts.every((t) => t.trim() === "") : texts.join(" ") === shown.join(" "))
      return onUnread?.(false);
    const typed = splitPasted(texts[0]) ?? splitPasted(texts[1]) ?? texts;
    const answer = readPlace(typed, degrees ? "degrees" : "grid", empty !== undefined);
    if (!answer.ok) return refuse(answer.faults);
    if (answer.value === null || epsg === null) return onTake(answer.value);
    if (!degrees) {
      if (!looksLikeDegrees(answer.value)) return onTake(answer.value);
      return refuse(["These look like degrees: choose latitude and longitude beside.", null]);
    }
    const [lat, lon] = answer.value;
    if (earth === null) return refuse(["The coordinate system is still being read.", null]);
    const at = earth.toGrid(lon, lat);
    if (at === null) return refuse([`Not a place that EPSG:${epsg} covers.`, null]);
    setForm("grid");
    const rounded = [Math.round(at[0] * 100) / 100, Math.round(at[1] * 100) / 100] as const;
    const next = shownOf(rounded);
    setNote({ of: next.join(" "), words: `From latitude ${lat}, longitude ${lon}. ${earth.doubt}` });
    setTexts(next);
    onTake(rounded);
  };

  const labels = degrees ? (["Latitude (°)", "Longitude (°)"] as const) : gridLabels(noun);
  return (
    <div
      className="place-pair"
      onBlur={(e) => {
        if (!e.currentTarget.contains(e.relatedTarget)) commit();
      }}
    >
      {epsg !== null && (
        <ChoiceField<PlaceForm>
          label={noun === undefined ? "Place given as" : `${noun} given as`}
          value={form}
          choices={[
            { value: "grid", words: "east and north on the grid" },
            { value: "degrees", words: "latitude and longitude (WGS 84)" },
          ]}
          onTake={(next) => {
            setForm(next);
            setTexts(next === "degrees" ? NOTHING : shown);
            setFaults(SOUND);
          }}
        />
      )}
      {([0, 1] as const).map((at) => (
        <TextInput
          key={at}
          label={labels[at]}
          value={texts[at]}
          error={faults[at]}
          inputMode="decimal"
          required={empty === undefined}
          {...(empty === undefined || degrees ? {} : { placeholder: empty })}
          onChange={(e) => change(at, e.currentTarget.value)}
          onPaste={paste}
          onKeyDown={(e) => {
            if (e.key === "Enter") commit();
          }}
        />
      ))}
      <p className="quiet fields-wide" aria-live="polite" hidden={note.of !== shown.join(" ")}>
        {note.words}
      </p>
    </div>
  );
}

const gridLabels = (noun: string | undefined): readonly [string, string] =>
  noun === undefined
    ? ["East on the grid (m)", "North on the grid (m)"]
    : [`${noun}, east on the grid (m)`, `${noun}, north on the grid (m)`];
