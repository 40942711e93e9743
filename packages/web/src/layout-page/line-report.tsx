import type { LineFit } from "@causey/engine/layout";
import { showQuantity, type UnitSystem } from "@causey/engine/units";
import { count } from "../show/show.ts";
import { brokenGroups, type BrokenGroup } from "./broken-groups.ts";

/** How well the parts follow the line drawn by hand, and every rule that it makes them break. */
export function LineReport({ fit, units }: { readonly fit: LineFit | null; readonly units: UnitSystem }) {
  if (fit === null) return null;
  const length = (v: number): string => showQuantity(v, "m", units);
  return (
    <section aria-labelledby="line-head">
      <h2 id="line-head">The drawn line</h2>
      <ul className="notes">
        {fit.lines.map((l) => (
          <li key={l.id} data-line={l.id}>
            {l.max_deviation_m === null || l.rms_deviation_m === null
              ? "No part could be fitted to it."
              : `Parts keep to it within ${length(l.max_deviation_m)}, ${length(l.rms_deviation_m)} on average.`}{" "}
            {l.not_followed.map(
              (s) =>
                `Between ${length(s.from_m)} and ${length(s.to_m)} along it no part keeps within the corridor. `,
            )}
          </li>
        ))}
      </ul>
      {fit.broken.length === 0 ? (
        <p>Every rule is kept along it.</p>
      ) : (
        <ul className="gaps" aria-label="Rules that the drawn line breaks">
          {brokenGroups(fit.broken).map((group) => (
            <BrokenLine key={group.key} group={group} />
          ))}
        </ul>
      )}
    </section>
  );
}

/** One rule, with every part that breaks it; the sentences fold away where each has its own figure. */
function BrokenLine({ group }: { readonly group: BrokenGroup }) {
  return (
    <li data-broken={group.rule}>
      <b>
        {group.where}
        {group.count > 2 && ` (${group.count})`}: {!group.isSame && "for example: "}
        {group.message}
      </b>{" "}
      <span className="quiet">{group.mend}</span>
      {!group.isSame && (
        <details>
          <summary>{count(group.count, "place")}</summary>
          <ul>
            {group.all.map((b) => (
              <li key={`${b.part_or_joint} ${b.place.join(" ")}`}>{b.message}</li>
            ))}
          </ul>
        </details>
      )}
    </li>
  );
}
