import { tables } from "@causey/data/tables";
import type { Plan, Results } from "@causey/engine/plan";
import { CodeChoice } from "./code-choice.tsx";
import { ChoiceField } from "../fields/choice-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { count } from "../show/show.ts";

/** Which rules the plan follows, where they clash with others, and what an engineer must look at. */
export function RuleChoice({ plan, results }: { readonly plan: Plan; readonly results: Results | null }) {
  const { value: rules, change } = useSection(plan, "rules");
  const profile = tables.rule_profiles.find((p) => p.id === rules.profile);
  return (
    <section aria-labelledby="rules-head" className="rule-choice">
      <h2 id="rules-head">Rules</h2>
      <ChoiceField
        label="Rule profile"
        value={rules.profile}
        choices={tables.rule_profiles.map((p) => ({ value: p.id, words: p.name }))}
        onTake={(id) => change({ profile: id })}
      />
      {profile && <p className="quiet">{profile.where}</p>}
      <CodeChoice plan={plan} />
      {rules.overrides.length > 0 && (
        <ul className="notes">
          {rules.overrides.map((o) => (
            <li key={o.rule}>
              The project&apos;s own value {o.value} for {o.rule}: {o.reason} ({o.by}, {o.date})
            </li>
          ))}
        </ul>
      )}
      {results && results.engineer.length > 0 && (
        <>
          <h3>A licensed engineer must look at</h3>
          <ul className="gaps">
            {results.engineer.map((flag) => (
              <li key={flag.id} data-engineer={flag.id}>
                <b>{flag.title}</b> {flag.because}
              </li>
            ))}
          </ul>
        </>
      )}
      {results && results.clashes.length > 0 && (
        <details>
          <summary>{count(results.clashes.length, "clash", "clashes")} with other profiles</summary>
          <ul className="notes">
            {results.clashes.map((clash) => (
              <li key={clash}>{clash}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
