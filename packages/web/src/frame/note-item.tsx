import type { NoteGroup } from "./note-groups.ts";
import "./problem-list.css";

/** Notes that say the same, as one: the first in full, and every place. */
export function NoteItem({ group: { first, places } }: { readonly group: NoteGroup }) {
  return (
    <li className={`problem problem-${first.severity}`}>
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
