import type { Problem } from "@causey/engine/formula";
import "./problem-list.css";

/** Everything that is wrong with what was given: where, what stands there, how to mend it. */
export function ProblemList({ problems }: { readonly problems: readonly Problem[] }) {
  return (
    <ul className="problems">
      {problems.map((p) => (
        <li key={`${p.file} ${p.place} ${p.code} ${p.message}`} className={`problem problem-${p.severity}`}>
          <p className="problem-message">{p.message}</p>
          {(p.file || p.place || p.value) && (
            <p className="problem-place">
              {p.file && <span>{p.file}</span>}
              {p.place && <span>{p.place}</span>}
              {p.value && <code>{p.value}</code>}
            </p>
          )}
          <p className="problem-mend">{p.mend}</p>
        </li>
      ))}
    </ul>
  );
}
