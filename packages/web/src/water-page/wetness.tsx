import type { Plan, Results } from "@causey/engine/plan";
import { alongWord, show } from "../show/show.ts";
import { readingOf } from "../show/reading.ts";
import { RowsScroll } from "../frame/rows-scroll.tsx";

const percent = (share: number): string => `${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`;

/** Hours under water of ground and deck, joint by joint, and what is odd about the levels. */
export function Wetness({ results, plan }: { readonly results: Results | null; readonly plan: Plan }) {
  if (!results) return <p className="quiet">The shares appear here when the layout has been worked out.</p>;
  const { water } = results;
  const nameOf = (id: string): string => plan.levels.find((l) => l.id === id)?.name ?? id;
  return (
    <>
      {water.findings.length > 0 && (
        <section aria-labelledby="level-findings">
          <h2 id="level-findings">Look again</h2>
          <ul className="gaps">
            {water.findings.map((f) => (
              <li key={`${f.level} ${f.message}`} data-level={f.level} title={nameOf(f.level)}>
                {f.message}
              </li>
            ))}
          </ul>
        </section>
      )}
      <section aria-labelledby="wet-head">
        <h2 id="wet-head">Under water</h2>
        {water.record ? (
          <>
            <p>
              {water.record.basis === "predicted" ? "Predicted" : "Recorded"},{" "}
              {water.record.from.slice(0, 10)} to {water.record.to.slice(0, 10)}
              {water.record.gaps > 0 && `, ${water.record.gaps} gaps`}.{" "}
              {water.longest_dry_h !== null &&
                `The lowest ground of the line stays dry for ${water.longest_dry_h.toFixed(1)} hours at the longest.`}
            </p>
            {water.record.zone_note && <p className="quiet">{water.record.zone_note}</p>}
            <WetTable results={results} plan={plan} />
            {water.record.attribution && <p className="quiet">{water.record.attribution}</p>}
          </>
        ) : null}
        <ul className="notes">
          {water.cautions.map((c) => (
            <li key={c}>{c}</li>
          ))}
        </ul>
      </section>
    </>
  );
}

function WetTable({ results, plan }: { readonly results: Results; readonly plan: Plan }) {
  const reading = readingOf(plan);
  const joints = new Map(results.layout.joints.map((j) => [j.id, j]));
  return (
    <RowsScroll label="Hours under water, scrolls">
      <table className="rows-table wet-table">
        <caption className="unseen">Share of time under water, joint by joint</caption>
        <thead>
          <tr>
            <th scope="col">Joint</th>
            <th scope="col">{alongWord(plan.units)}</th>
            <th scope="col">Ground</th>
            <th scope="col">Deck</th>
          </tr>
        </thead>
        <tbody>
          {results.water.joints.map((j) => (
            <tr key={j.joint}>
              <th scope="row">{j.joint}</th>
              <td>{show(joints.get(j.joint)?.along_m ?? 0, "m", reading)}</td>
              <td>
                {percent(j.ground.share)}
                {j.ground.hours_per_year !== null && (
                  <span className="quiet"> {Math.round(j.ground.hours_per_year)} h a year</span>
                )}
                {j.ground.low !== null && j.ground.high !== null && (
                  <span className="quiet">
                    {" "}
                    ({percent(j.ground.low)} to {percent(j.ground.high)})
                  </span>
                )}
              </td>
              <td>{percent(j.deck.share)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </RowsScroll>
  );
}
