import type { Problem } from "@causey/engine/formula";
import { useDerived } from "../desk/use-derived.ts";
import { count } from "../show/show.ts";
import { groupNotes, type NoteGroup } from "./note-groups.ts";
import "./input-notes.css";

/** What is doubtful in the plan's input, in one line that opens: it stands on every page and must not crowd it. */
export function InputNotes() {
  const { phase, warnings } = useDerived();
  if (phase !== "idle" || warnings.length === 0) return null;
  return <NotesFold warnings={warnings} />;
}

function NotesFold({ warnings }: { readonly warnings: readonly Problem[] }) {
  const groups = groupNotes(warnings);
  return (
    <details className="input-notes">
      <summary>
        {count(warnings.length, "note")} on the input
        {groups.length < warnings.length && `, of ${count(groups.length, "kind")}`}
      </summary>
      <ul className="problems">
        {groups.map((group) => (
          <NoteItem key={`${group.code} ${group.first.file} ${group.first.message}`} group={group} />
        ))}
      </ul>
    </details>
  );
}

function NoteItem({ group: { first, places } }: { readonly group: NoteGroup }) {
  return (
    <li className="problem problem-warning">
      <p className="problem-message">
        {first.message}
        {places.length > 1 && ` The same of ${places.length - 1} more.`}
      </p>
      <p className="problem-place">
        <span>{first.file}</span>
        {places.map((place) => (
          <span key={place}>{place}</span>
        ))}
        {first.value && <code>{first.value}</code>}
      </p>
      <p className="problem-mend">{first.mend}</p>
    </li>
  );
}
