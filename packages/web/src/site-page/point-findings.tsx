import type { Plan, Results } from "@causey/engine/plan";
import { readingOf } from "../show/reading.ts";
import { count, show } from "../show/show.ts";
import { RowsScroll } from "../frame/rows-scroll.tsx";

interface Props {
  readonly points: NonNullable<Results["survey"]["points"]>;
  readonly plan: Plan;
}

/** The survey points that the ground was made of: how many, how exact, and which stand away from their neighbours. */
export function PointFindings({ points, plan }: Props) {
  const reading = readingOf(plan);
  const { n, sigma_m, not_judged, merged, left_out, accuracy, dates, outliers, outlier_count } = points;
  return (
    <section aria-labelledby="points-head">
      <h2 id="points-head">Survey points</h2>
      <p>
        {count(n, "point")}
        {left_out > 0 && `, ${count(left_out, "row")} of the file left out`}
        {merged > 0 && `, ${merged} on the spot of another`}.
        {sigma_m !== null && ` They lie within ${show(sigma_m, "m", reading)} of their neighbours' ground.`}
        {not_judged > 0 && ` ${count(not_judged, "point")} could not be held against neighbours.`}
      </p>
      <p className="quiet">
        {accuracy
          ? `Accuracy claimed: ${show(accuracy.median_m, "m", reading)} in the middle, ${show(accuracy.worst_m, "m", reading)} at worst (${accuracy.stated} stated).`
          : "No accuracy is claimed."}{" "}
        {dates ? `Taken from ${dates.first} to ${dates.last}.` : "No days are given."}
      </p>
      {outlier_count > 0 && (
        <details className="survey-list">
          <summary>{count(outlier_count, "point")} away from the neighbours: wrong, or a bank</summary>
          <RowsScroll label="Points, scrolls">
            <table className="rows-table figures-table">
              <caption className="unseen">Points away from their neighbours, widest first</caption>
              <thead>
                <tr>
                  <th scope="col">Point</th>
                  <th scope="col">Line</th>
                  <th scope="col">Height</th>
                  <th scope="col">Above neighbours</th>
                  <th scope="col">Deviations</th>
                  <th scope="col">Accuracy claimed</th>
                  <th scope="col">Day</th>
                </tr>
              </thead>
              <tbody>
                {outliers.map((o) => (
                  <tr key={o.line}>
                    <th scope="row">{o.id ?? "no name"}</th>
                    <td>{o.line}</td>
                    <td>{show(o.z_m, "m", reading)}</td>
                    <td>{show(o.residual_m, "m", reading)}</td>
                    <td>{o.sigmas.toFixed(1)}</td>
                    <td>{o.accuracy_m === null ? "not stated" : show(o.accuracy_m, "m", reading)}</td>
                    <td>{o.date ?? "not stated"}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </RowsScroll>
          {outliers.length < outlier_count && (
            <p className="quiet">The widest {outliers.length} are listed.</p>
          )}
        </details>
      )}
    </section>
  );
}
