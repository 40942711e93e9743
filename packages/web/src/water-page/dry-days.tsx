import type { Results } from "@causey/engine/plan";
import { useState } from "react";
import { ChoiceField } from "../fields/choice-field.tsx";
import { RowsScroll } from "../frame/rows-scroll.tsx";

type StationDays = Results["water"]["days"][number];
type Window = StationDays["days"][number]["windows"][number];

const hour = (iso: string): string => iso.slice(11, 16);
const hours = (h: number): string => `${h.toFixed(1)} h`;

/** Dry hours and windows of one joint, day by day while the walkway is laid; the joint is the reader's choice. */
export function DryDays({ results }: { readonly results: Results }) {
  const { days } = results.water;
  const plots = new Map(results.layout.reached.map((r) => [r.joint, r.plot]));
  const [chosen, setChosen] = useState<string | null>(null);
  const station = days.find((s) => s.station === chosen) ?? days.find((s) => plots.has(s.station)) ?? days[0];
  if (!station) return null;
  return (
    <section aria-labelledby="dry-head">
      <h2 id="dry-head">Dry hours while laying</h2>
      <ChoiceField
        label="At the joint"
        value={station.station}
        choices={days.map(({ station: id }) => ({
          value: id,
          words: plots.has(id) ? `${id}, at plot ${plots.get(id)}` : id,
        }))}
        onTake={setChosen}
      />
      <p className="quiet">
        All times in UTC. A window needs the lowest ground on the way there dry; back by: four hours before
        the high water that ends it (lifeboat officer, north Norfolk marshes).
      </p>
      <DayTable station={station} />
    </section>
  );
}

const DayTable = ({ station }: { readonly station: StationDays }) => (
  <RowsScroll label="Dry hours, scrolls">
    <table className="rows-table dry-table">
      <caption className="unseen">Dry hours and windows at joint {station.station}, day by day</caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col">Ground dry</th>
          <th scope="col">Way dry</th>
          <th scope="col">Back by</th>
        </tr>
      </thead>
      <tbody>
        {station.days.map((d) => (
          <tr key={d.day} data-day={d.day}>
            <th scope="row">{d.day}</th>
            <td>
              {hours(d.dry_h)}
              {d.covered_h < 23.99 && <span className="quiet"> of {hours(d.covered_h)} known</span>}
            </td>
            <td>
              {d.windows.length === 0
                ? "never"
                : d.windows.map((w) => <div key={w.from}>{`${hour(w.from)} to ${endOf(w)}`}</div>)}
            </td>
            <td>
              {d.windows.map((w) => (
                <div key={w.from}>{backBy(w)}</div>
              ))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </RowsScroll>
);

const endOf = (w: Window): string =>
  w.ends === "midnight" ? "24:00, goes on" : w.ends === "record" ? `${hour(w.to)}, record ends` : hour(w.to);

function backBy(w: Window): string {
  if (w.safe_h === 0) return "do not set out";
  if (w.back_by !== null) return hour(w.back_by);
  return w.ends === "midnight" ? "not this day" : hour(w.to);
}
