import type { Problem } from "@causey/engine/formula";
import { groupNotes } from "../../frame/note-groups.ts";
import { NoteItem } from "../../frame/note-item.tsx";
import { count } from "../../show/show.ts";
import type { LayerPreview } from "./layer-preview.ts";

const LISTED = 200;

interface Props {
  readonly preview: LayerPreview | null;
  /** Warnings of the file and of its way into the site's grid. */
  readonly problems: readonly Problem[];
  readonly noun: string;
}

/** What would be taken over, and everything that is wrong or worth a look. */
export function LayerOutcome({ preview, problems, noun }: Props) {
  const all = [...problems, ...(preview?.problems ?? [])].toSorted(
    (a, b) => Number(a.severity === "warning") - Number(b.severity === "warning"),
  );
  const groups = groupNotes(all);
  const errors = all.filter((p) => p.severity === "error").length;
  return (
    <>
      {preview && preview.edit && (
        <p data-layer-count={preview.count}>
          <b>{count(preview.count, noun)}</b> can be taken over
          {preview.known > 0 && `; ${preview.known} of them in the place of what is there`}.
        </p>
      )}
      {errors > 0 && (
        <p>
          Nothing can be taken over: <b>{count(errors, "problem")}</b>
          {` ${errors === 1 ? "stands" : "stand"} against it.`}
        </p>
      )}
      {groups.length > 0 && (
        <ul className="problems">
          {groups.slice(0, LISTED).map((group) => (
            <NoteItem key={`${group.code} ${group.first.place} ${group.first.message}`} group={group} />
          ))}
        </ul>
      )}
      {groups.length > LISTED && <p className="quiet">and {groups.length - LISTED} more</p>}
    </>
  );
}
