import type { Plan, Results } from "@causey/engine/plan";
import { readingOf } from "../show/reading.ts";
import { show } from "../show/show.ts";

interface Props {
  readonly residuals: Results["water"]["residuals"];
  readonly plan: Plan;
}

/** How far the water stood from its prediction. */
export function Residuals({ residuals: r, plan }: Props) {
  if (r === null) return null;
  const reading = readingOf(plan);
  const rows: readonly (readonly [string, number])[] = [
    ["Middle of recorded less predicted", r.mean_m],
    ["Spread about it, standard deviation", r.sd_m],
    ["95 of 100 lie above", r.low_m],
    ["95 of 100 lie below", r.high_m],
    [`Highest over the prediction, ${r.most_at.replace("T", " ").replace("Z", " UTC")}`, r.most_m],
  ];
  return (
    <section aria-labelledby="residual-head">
      <h2 id="residual-head">Recorded against predicted</h2>
      <p>
        {r.n.toLocaleString(plan.units === "us" ? "en-US" : "en-GB")} times from {r.from.slice(0, 10)} to{" "}
        {r.to.slice(0, 10)}.
      </p>
      <table className="rows-table residual-table">
        <caption className="unseen">Recorded less predicted level</caption>
        <tbody>
          {rows.map(([words, value]) => (
            <tr key={words}>
              <th scope="row">{words}</th>
              <td>{show(value, "m", reading)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
