import type { Plan, Results } from "@causey/engine/plan";
import { readingOf } from "../show/reading.ts";
import { alongWord, show } from "../show/show.ts";
import { useSize } from "../show/use-size.ts";
import { RowsScroll } from "../frame/rows-scroll.tsx";
import { pointsOf, profileDrawing } from "./profile-scale.ts";
import "./survey-results.css";

type Stations = Results["survey"]["stations"];
interface Props {
  readonly stations: Stations;
  readonly plan: Plan;
}

const HEIGHT = 190;

/** The stations in their order: ground, firm layer under it, and water, as a picture and as a table. */
export function ProbeProfile({ stations, plan }: Props) {
  const { width, measure } = useSize();
  if (stations.length === 0) return null;
  return (
    <section aria-labelledby="profile-head">
      <h2 id="profile-head">Stations</h2>
      <div ref={measure} className="profile-room">
        {width > 0 && <ProfilePicture stations={stations} width={width} plan={plan} />}
      </div>
      <ul className="profile-key">
        <li className="profile-key-ground">ground</li>
        {stations.some((s) => s.firm_m !== null) && <li className="profile-key-firm">firm layer</li>}
        {stations.some((s) => s.water_m !== null) && <li className="profile-key-water">water</li>}
      </ul>
      <StationTable stations={stations} plan={plan} />
    </section>
  );
}

/** Every station at its place along the line: ground, probe down to the firm layer, water. */
export function ProfilePicture({ stations, width, plan }: Props & { readonly width: number }) {
  const d = profileDrawing(stations, width, HEIGHT);
  const reading = readingOf(plan);
  return (
    <svg
      className="profile"
      width={d.width}
      height={d.height}
      role="img"
      aria-label={`Profile through ${stations.length} stations, from ${show(d.bottom_m, "m", reading)} to ${show(d.top_m, "m", reading)}; the table below holds its numbers.`}
    >
      {d.soft.map((run) => (
        <polygon key={pointsOf(run)} className="profile-soft" points={pointsOf(run)} />
      ))}
      {d.firm.map((run) => (
        <polyline key={pointsOf(run)} className="profile-firm" points={pointsOf(run)} />
      ))}
      {d.water.map((run) => (
        <polyline key={pointsOf(run)} className="profile-water" points={pointsOf(run)} />
      ))}
      <polyline className="profile-ground" points={pointsOf(d.ground)} />
      {d.marks.map((m) => (
        <g key={m.id} data-station={m.id}>
          {m.firm !== null && <line className="profile-probe" x1={m.x} x2={m.x} y1={m.ground} y2={m.firm} />}
          {m.firm !== null && (
            <line className="profile-firm" x1={m.x - 4} x2={m.x + 4} y1={m.firm} y2={m.firm} />
          )}
          {m.water !== null && (
            <line className="profile-water" x1={m.x - 5} x2={m.x + 5} y1={m.water} y2={m.water} />
          )}
          <circle className="profile-mark" cx={m.x} cy={m.ground} r="2.6" />
          {m.named && (
            <text className="profile-name" x={m.x} y={d.height - 6}>
              {m.id}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}

function StationTable({ stations, plan }: Props) {
  const reading = readingOf(plan);
  const height = (m: number | null): string => (m === null ? "not read" : show(m, "m", reading));
  return (
    <RowsScroll label="Probe depths, scrolls">
      <table className="rows-table figures-table">
        <caption className="unseen">Stations in their order</caption>
        <thead>
          <tr>
            <th scope="col">Station</th>
            <th scope="col">{alongWord(plan.units)}</th>
            <th scope="col">Ground</th>
            <th scope="col">Probe sank</th>
            <th scope="col">Firm at</th>
            <th scope="col">Water over ground</th>
          </tr>
        </thead>
        <tbody>
          {stations.map((s) => (
            <tr key={s.id}>
              <th scope="row">{s.id}</th>
              <td>{show(s.along_m, "m", reading)}</td>
              <td>{show(s.ground_m, "m", reading)}</td>
              <td>{height(s.probe_m)}</td>
              <td>{height(s.firm_m)}</td>
              <td>{height(s.water_over_m)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </RowsScroll>
  );
}
