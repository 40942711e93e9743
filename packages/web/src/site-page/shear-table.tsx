import type { Plan, Results } from "@causey/engine/plan";
import { readingOf } from "../show/reading.ts";
import { show } from "../show/show.ts";
import { RowsScroll } from "../frame/rows-scroll.tsx";

interface Props {
  readonly survey: Results["survey"];
  readonly plan: Plan;
}

/** Strength and sensitivity of the ground, reading by reading, grouped by station from the top down. */
export function ShearTable({ survey: { shear }, plan }: Props) {
  if (shear.length === 0) return null;
  const reading = readingOf(plan);
  return (
    <section aria-labelledby="shear-head">
      <h2 id="shear-head">Strength readings</h2>
      <p className="quiet">Sensitivity is peak over remoulded strength: what stirring takes away.</p>
      <RowsScroll label="Strength readings, scrolls">
        <table className="rows-table figures-table">
          <caption className="unseen">Undrained strength by place and depth</caption>
          <thead>
            <tr>
              <th scope="col">Place (east, north)</th>
              <th scope="col">Depth</th>
              <th scope="col">Peak</th>
              <th scope="col">Remoulded</th>
              <th scope="col">Sensitivity</th>
              <th scope="col">Vane</th>
            </tr>
          </thead>
          <tbody>
            {shear.flatMap((place) =>
              place.readings.map((r, i) => (
                // Two readings of one depth at one place are told apart by their order alone.
                // oxlint-disable-next-line react/no-array-index-key
                <tr key={`${place.x} ${place.y} ${i}`} title={r.source}>
                  <th scope="row">
                    {i === 0 ? (
                      `${place.x.toFixed(1)}, ${place.y.toFixed(1)}`
                    ) : (
                      <span className="unseen">same place</span>
                    )}
                  </th>
                  <td>{show(r.depth_m, "m", reading)}</td>
                  <td>{r.su_kpa.toFixed(1)} kPa</td>
                  <td>{r.remoulded_kpa === null ? "not read" : `${r.remoulded_kpa.toFixed(1)} kPa`}</td>
                  <td>{r.sensitivity === null ? "not known" : r.sensitivity.toFixed(1)}</td>
                  <td>{r.vane_mm === null ? "not told" : `${r.vane_mm} mm`}</td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </RowsScroll>
    </section>
  );
}
