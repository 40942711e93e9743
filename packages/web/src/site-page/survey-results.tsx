import type { Plan, Results } from "@causey/engine/plan";
import { lazy, Suspense, useState } from "react";
import { readingOf } from "../show/reading.ts";
import { count, show } from "../show/show.ts";
import { RowsScroll } from "../frame/rows-scroll.tsx";
import { ClosureTable } from "./closure-table.tsx";
import { PointFindings } from "./point-findings.tsx";
import { ProbeProfile } from "./probe-profile.tsx";
import { ShearTable } from "./shear-table.tsx";
import { bandFigure } from "./survey-words.ts";
import "./survey-results.css";

const FigureDrawer = lazy(() => import("../working/figure-drawer.tsx"));

interface Props {
  readonly survey: Results["survey"];
  readonly plan: Plan;
}

/** What the survey says: how well heights are known, what does not fit, how soft the ground is. */
export const SurveyFindings = ({ survey, plan }: Props) => (
  <>
    <HeightFindings survey={survey} plan={plan} />
    <ClosureTable survey={survey} plan={plan} />
    {survey.points && <PointFindings points={survey.points} plan={plan} />}
    <ProbeProfile stations={survey.stations} plan={plan} />
    <ShearTable survey={survey} plan={plan} />
  </>
);

function HeightFindings({ survey, plan }: Props) {
  const [isOpen, setOpen] = useState(false);
  const reading = readingOf(plan);
  const { terrain } = survey;
  const figure = bandFigure(survey);
  return (
    <section aria-labelledby="heights-head">
      <h2 id="heights-head">How well heights are known</h2>
      <dl className="figures">
        <div className="figure" data-figure="height-band">
          <dt>Band on every height, 95 %</dt>
          <dd>
            {figure === null ? (
              "not known"
            ) : (
              <button
                type="button"
                className="plain-button figure-value"
                aria-haspopup="dialog"
                onClick={() => setOpen(true)}
              >
                ± {show(figure.value, figure.unit, reading)}
                <span className="unseen">, show the working</span>
              </button>
            )}
          </dd>
        </div>
        {terrain && <BiasLines terrain={terrain} plan={plan} />}
        {survey.accuracy_m !== null && (
          <div className="figure">
            <dt>Accuracy that its maker states</dt>
            <dd>{show(survey.accuracy_m, "m", reading)}</dd>
          </div>
        )}
      </dl>
      {terrain && <p>{terrain.note}</p>}
      {survey.date !== null && <p className="quiet">Flown or surveyed on {survey.date}.</p>}
      <ul className="notes">
        {survey.unchecked_habitats.map((h) => (
          <li key={h.zone}>
            <b>{h.name}</b> has no check shot: heights there may be the leaves&rsquo;, not the ground&rsquo;s.
          </li>
        ))}
        {survey.cautions.map((c) => (
          <li key={c}>{c}</li>
        ))}
      </ul>
      <ShotTable survey={survey} plan={plan} />
      <Suspense>
        {isOpen && figure && (
          <FigureDrawer figure={figure} reading={reading} onClose={() => setOpen(false)} />
        )}
      </Suspense>
    </section>
  );
}

function BiasLines({
  terrain: { n, median_m, sd_m },
  plan,
}: {
  readonly terrain: NonNullable<Props["survey"]["terrain"]>;
  readonly plan: Plan;
}) {
  const reading = readingOf(plan);
  return (
    <>
      {median_m !== null && (
        <div className="figure" data-figure="terrain-bias">
          <dt>Terrain less check shot, middle of {count(n, "shot")}</dt>
          <dd>{show(median_m, "m", reading)}</dd>
        </div>
      )}
      {sd_m !== null && (
        <div className="figure" data-figure="terrain-spread">
          <dt>Spread of the shots</dt>
          <dd>{show(sd_m, "m", reading)}</dd>
        </div>
      )}
    </>
  );
}

function ShotTable({ survey: { terrain }, plan }: Props) {
  if (!terrain || terrain.shots.length === 0) return null;
  const reading = readingOf(plan);
  return (
    <details className="survey-list">
      <summary>Check shots, one by one</summary>
      <RowsScroll label="Survey, scrolls">
        <table className="rows-table figures-table">
          <caption className="unseen">Terrain less check shot</caption>
          <thead>
            <tr>
              <th scope="col">Shot</th>
              <th scope="col">Terrain less shot</th>
              <th scope="col">Look again</th>
            </tr>
          </thead>
          <tbody>
            {terrain.shots.map((s) => (
              <tr key={s.id} data-shot={s.id}>
                <th scope="row">{s.id}</th>
                <td>{show(s.residual_m, "m", reading)}</td>
                <td>{s.outlier ? "far from the others; counted all the same" : ""}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </RowsScroll>
      {terrain.elsewhere.length > 0 && (
        <p className="quiet">Outside the habitats, held apart: {terrain.elsewhere.join(", ")}.</p>
      )}
      {terrain.off_terrain.length > 0 && (
        <p className="quiet">Where the terrain has no height: {terrain.off_terrain.join(", ")}.</p>
      )}
    </details>
  );
}
