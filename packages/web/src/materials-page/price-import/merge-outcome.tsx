import { packNotes, type MergedPrices, type MergeWay, type QuoteRead } from "@causey/io/prices";
import type { Problem } from "@causey/engine/formula";
import type { TakeOff } from "@causey/engine/materials";
import { ProblemList } from "../../frame/problem-list.tsx";
import { count } from "../../show/show.ts";
import { MissingAfter } from "../missing-after.tsx";

interface Props {
  readonly read: QuoteRead;
  readonly merged: MergedPrices;
  readonly way: MergeWay;
  readonly problems: readonly Problem[];
  /** Rows of the file that are left out. */
  readonly left: number;
  readonly needs: TakeOff | null;
}

/** What would come of the file: prices new, replaced and kept, what is to be known of them, and what would be lacking. */
export function MergeOutcome({ read, merged, way, problems, left, needs }: Props) {
  const notes = [...read.notes, ...packNotes(merged.gone, read.prices)];
  const isSound = !problems.some((p) => p.severity === "error");
  return (
    <>
      <p data-import-count={read.prices.length}>
        <b>{count(read.prices.length, "price")}</b> can be taken over
        {left > 0 && `, ${count(left, "row")} left out`}. {isSound && listWords(merged, way)}
      </p>
      {notes.length > 0 && (
        <ul className="notes">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      {problems.length > 0 && <ProblemList problems={problems} />}
      {isSound && read.prices.length > 0 && <MissingAfter needs={needs} prices={merged.prices} />}
    </>
  );
}

const listWords = ({ gone, stay, added }: MergedPrices, way: MergeWay): string =>
  way === "replace"
    ? `All ${count(gone.length, "price")} that the list holds now are taken out.`
    : `${count(gone.length, "price")} of the list ${gone.length === 1 ? "is" : "are"} replaced, ${added.length} added, ${stay.length} kept as ${stay.length === 1 ? "it is" : "they are"}.`;
