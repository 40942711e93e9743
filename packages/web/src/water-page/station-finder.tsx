import { Button } from "@mantine/core";
import type { Plan } from "@causey/engine/plan";
import { levelsFromStation, type WaterLevel } from "@causey/engine/water";
import { useState } from "react";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { show } from "../show/show.ts";
import { readingOf } from "../show/reading.ts";
import { siteLonLat, stationsAround, type Station } from "./stations.ts";

type Search =
  | { readonly kind: "idle" }
  | { readonly kind: "asking" }
  | { readonly kind: "found"; readonly stations: readonly Station[] }
  | { readonly kind: "failed"; readonly message: string };

/** Levels of the tide stations around the site, where they publish them on the plan's own datum. */
export function StationFinder({ plan }: { readonly plan: Plan }) {
  const [search, setSearch] = useState<Search>({ kind: "idle" });
  const [typed, setTyped] = useState<{ lon: number | null; lat: number | null }>({ lon: null, lat: null });
  const isLocal = !("epsg" in plan.crs);
  const find = async (): Promise<void> => {
    setSearch({ kind: "asking" });
    try {
      const at = isLocal ? typed : await siteLonLat(plan);
      if (at.lon === null || at.lat === null) throw new Error("Give longitude and latitude of the site.");
      setSearch({ kind: "found", stations: await stationsAround(at.lon, at.lat) });
    } catch (error) {
      setSearch({ kind: "failed", message: error instanceof Error ? error.message : String(error) });
    }
  };
  return (
    <FieldGroup
      title="Tide stations around"
      note="From an open database; stations whose numbers may not be used freely are left out."
    >
      {isLocal && (
        <div className="fields">
          <NumberField
            label="Longitude of the site"
            unit="°"
            optional
            value={typed.lon}
            onTake={(lon) => setTyped({ ...typed, lon })}
          />
          <NumberField
            label="Latitude of the site"
            unit="°"
            optional
            value={typed.lat}
            onTake={(lat) => setTyped({ ...typed, lat })}
          />
        </div>
      )}
      <div className="file-row">
        <Button variant="default" loading={search.kind === "asking"} onClick={() => void find()}>
          Look for stations
        </Button>
      </div>
      <div aria-live="polite">
        {search.kind === "failed" && <p>{search.message}</p>}
        {search.kind === "found" && search.stations.length === 0 && (
          <p>No station lies within 150 km: type the levels of the nearest gauge.</p>
        )}
        {search.kind === "found" && (
          <ul className="stations-found">
            {search.stations.map((station) => (
              <StationLine key={station.id} station={station} plan={plan} />
            ))}
          </ul>
        )}
      </div>
    </FieldGroup>
  );
}

function StationLine({ station, plan }: { readonly station: Station; readonly plan: Plan }) {
  const { value: levels, take } = useSection(plan, "levels");
  const reading = readingOf(plan);
  const answer = levelsFromStation(station, plan.vertical_datum);
  const takeOver = (mine: readonly WaterLevel[]): void =>
    take([...levels.filter((l) => !mine.some((m) => m.id === l.id)), ...mine]);
  return (
    <li>
      <b>{station.name}</b>, {show(station.distance_km * 1000, "m", reading)} away
      <p className="quiet">
        {station.levels.map((l) => `${l.name} ${show(l.z_m, "m", reading)}`).join("; ")}
        {station.land_datum !== null &&
          ` above ${station.land_datum}, ${station.epoch || "years not told"}. `}
        {[...station.notes, station.attribution].join(" ")}
      </p>
      {station.land_datum !== null &&
        ("levels" in answer ? (
          <Button variant="default" size="compact-sm" onClick={() => takeOver(answer.levels)}>
            Take these levels
          </Button>
        ) : (
          <p>{answer.why}</p>
        ))}
    </li>
  );
}
