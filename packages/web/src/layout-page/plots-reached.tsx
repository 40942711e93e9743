import type { Layout } from "@causey/engine/layout";
import type { Plan } from "@causey/engine/plan";
import { showQuantity } from "@causey/engine/units";

/** Which plots the walkway reaches and, for the others, what is in the way. */
export function PlotsReached({ layout, plan }: { readonly layout: Layout; readonly plan: Plan }) {
  const nameOf = (id: string): string => plan.plots.find((p) => p.id === id)?.name ?? id;
  const overName = (id: string): string => plan.zones.find((z) => z.id === id)?.name ?? id;
  const length = (v: number): string => showQuantity(v, "m", plan.units);
  return (
    <section aria-labelledby="plots-head">
      <h2 id="plots-head">Plots</h2>
      <ul className="plots-reached">
        {layout.reached.map((r) => (
          <li key={r.plot} className="plot-line">
            <span className="plot-sign plot-sign-reached" aria-hidden="true" />
            <b>{nameOf(r.plot)}</b>
            <span>
              reached from joint {r.joint}, {length(r.distance_m)} away; {length(r.walk_m)} of walkway from
              the start
            </span>
          </li>
        ))}
        {layout.unreached.map((u) => (
          <li key={u.plot} className="plot-line">
            <span className="plot-sign plot-sign-unreached" aria-hidden="true" />
            <b>{nameOf(u.plot)}</b>
            <span>
              not reached. {u.because}
              {u.gap && ` The least gap to bridge is ${length(u.gap.width_m)} over ${overName(u.gap.over)}.`}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
