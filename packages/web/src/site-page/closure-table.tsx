import type { Plan, Results } from "@causey/engine/plan";
import { readingOf } from "../show/reading.ts";
import { show } from "../show/show.ts";
import { RowsScroll } from "../frame/rows-scroll.tsx";

interface Props {
  readonly survey: Results["survey"];
  readonly plan: Plan;
}

/** The survey held against the marks of known height that it was tied to. */
export function ClosureTable({ survey: { closure }, plan }: Props) {
  const reading = readingOf(plan);
  const nameOf = (id: string): string => plan.survey.benchmarks.find((b) => b.id === id)?.name ?? id;
  const { closures, rms_m, not_visited, other_datum } = closure;
  if (closures.length + not_visited.length + other_datum.length === 0) return null;
  return (
    <section aria-labelledby="closure-head">
      <h2 id="closure-head">Closure on the marks</h2>
      {closures.length > 0 && (
        <RowsScroll label="Closures, scrolls">
          <table className="rows-table figures-table">
            <caption className="unseen">Check shots on marks of known height</caption>
            <thead>
              <tr>
                <th scope="col">Mark</th>
                <th scope="col">Its height</th>
                <th scope="col">Shot</th>
                <th scope="col">Shot less mark</th>
                <th scope="col">Closes</th>
              </tr>
            </thead>
            <tbody>
              {closures.map((c) => (
                <tr key={`${c.benchmark} ${c.shot}`}>
                  <th scope="row">{nameOf(c.benchmark)}</th>
                  <td>{show(c.mark_m, "m", reading)}</td>
                  <td>
                    {c.shot}: {show(c.shot_m, "m", reading)}
                  </td>
                  <td>{show(c.difference_m, "m", reading)}</td>
                  <td>{c.closes === null ? "no accuracy claimed" : c.closes ? "yes" : "no"}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </RowsScroll>
      )}
      {rms_m !== null && closures.length > 1 && (
        <p className="quiet">Root mean square of the differences: {show(rms_m, "m", reading)}.</p>
      )}
      {not_visited.length > 0 && <p>No shot was taken on {not_visited.map(nameOf).join(", ")}.</p>}
      {other_datum.length > 0 && (
        <p>On another datum, held against nothing: {other_datum.map(nameOf).join(", ")}.</p>
      )}
    </section>
  );
}
