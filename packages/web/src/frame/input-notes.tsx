import type { Problem } from "@causey/engine/formula";
import { useDerived } from "../desk/use-derived.ts";
import { count } from "../show/show.ts";
import { groupNotes } from "./note-groups.ts";
import { NoteItem } from "./note-item.tsx";
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
