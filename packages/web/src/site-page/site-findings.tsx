import type { Plan, Results } from "@causey/engine/plan";
import { useDerived } from "../desk/use-derived.ts";
import { ProblemList } from "../frame/problem-list.tsx";
import { SurveyFindings } from "./survey-results.tsx";

/** What the reading of the site found odd, which stops no planning, and what the survey says. */
export function SiteFindings({ plan, results }: { readonly plan: Plan; readonly results: Results | null }) {
  const { warnings } = useDerived();
  return (
    <>
      <section aria-labelledby="site-findings">
        <h2 id="site-findings">Found when reading</h2>
        {warnings.length > 0 ? (
          <ProblemList problems={warnings} />
        ) : (
          <p className="quiet">
            {results ? "Nothing odd in the files." : "The files are being read."} Heights on{" "}
            {plan.vertical_datum}.
          </p>
        )}
      </section>
      {results && <SurveyFindings survey={results.survey} plan={plan} />}
    </>
  );
}
