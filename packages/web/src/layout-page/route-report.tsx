import type { RouteFacts } from "@causey/engine/layout";
import type { Plan } from "@causey/engine/plan";
import { RowsScroll } from "../frame/rows-scroll.tsx";
import { count, show } from "../show/show.ts";
import { readingOf } from "../show/reading.ts";

interface Props {
  readonly route: RouteFacts;
  readonly plan: Plan;
}

/** What the route crosses: owners, water, sensitive ground, and how near it comes to the plots. */
export function RouteReport({ route, plan }: Props) {
  const reading = readingOf(plan);
  const metres = (v: number): string => show(v, "m", reading);
  return (
    <section aria-labelledby="route-head">
      <h2 id="route-head">What the route crosses</h2>
      {route.parcels.length === 0 ? (
        <p className="quiet">No parcel lies under it: who owns the ground is not known here.</p>
      ) : (
        <Rows
          label="Owners"
          heads={["Parcel", "Owner", "Length"]}
          rows={[
            ...route.parcels.map((p) => [p.name, p.owner ?? "not told", metres(p.length_m)]),
            ...(route.no_parcel_m > 0.005
              ? [["outside every parcel", "not known", metres(route.no_parcel_m)]]
              : []),
          ]}
        />
      )}
      {route.crossings.length === 0 ? (
        <p>
          {plan.zones.some((z) => z.use === "channel" || z.use === "pool")
            ? "No channel, ditch or pool."
            : "Crossings were not looked for: no channel or pool area was given."}
        </p>
      ) : (
        <Rows
          label="Water crossed"
          heads={["Water", "Type", "Part", "Clear width"]}
          rows={route.crossings.map((c) => [c.name, c.type, c.part, metres(c.width_m)])}
        />
      )}
      {route.sensitive.length === 0 ? (
        <p>No ground more sensitive than plain grass.</p>
      ) : (
        <Rows
          label="Sensitive ground"
          heads={["Sensitive ground", "Harm per area", "Length"]}
          rows={[
            ...route.sensitive.map((s) => [s.name, String(s.sensitivity), metres(s.length_m)]),
            [count(route.sensitive.length, "area"), "", metres(route.sensitive_m)],
          ]}
        />
      )}
      <PlotsClear route={route} plan={plan} />
    </section>
  );
}

function PlotsClear({ route, plan }: Props) {
  const reading = readingOf(plan);
  return (
    <ul className="notes">
      {route.plots.map((p) => (
        <li key={p.plot} data-plot-kept={p.plot}>
          {plan.plots.find((q) => q.id === p.plot)?.name ?? p.plot}:{" "}
          {p.nearest_m === null
            ? "no part is laid."
            : `the nearest part or foot lies ${show(p.nearest_m, "m", reading)} away; ${show(p.overlap_m2, "m2", reading)} lie inside its keep-off circle.`}
        </li>
      ))}
    </ul>
  );
}

interface RowsProps {
  readonly label: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const Rows = ({ label, heads, rows }: RowsProps) => (
  <RowsScroll label={`${label}, scrolls`}>
    <table className="rows-table">
      <caption className="unseen">{label}</caption>
      <thead>
        <tr>
          {heads.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((cells) => (
          <tr key={cells.join(" ")}>
            {cells.map((cell, i) =>
              i === 0 ? (
                <th key={heads[i]} scope="row">
                  {cell}
                </th>
              ) : (
                <td key={heads[i]}>{cell}</td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  </RowsScroll>
);
