import type { Problem } from "@causey/engine/formula";
import { ProblemList } from "../../frame/problem-list.tsx";
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
      {all.length > 0 && <ProblemList problems={all.slice(0, LISTED)} />}
      {all.length > LISTED && <p className="quiet">and {all.length - LISTED} more</p>}
    </>
  );
}
