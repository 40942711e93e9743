import type { LeftOutReason } from "@causey/io/points";
import { ProblemList } from "../frame/problem-list.tsx";
import { count } from "../show/show.ts";
import type { ImportPreview } from "./readings-import.ts";

const reasons: Readonly<Record<LeftOutReason, string>> = {
  "no-position": "no position",
  "position-zero": "position 0, 0",
  "no-height": "no height",
  "height-zero": "height 0 among others that are not",
  "no-data-value": "a value that stands for nothing",
  "no-reading": "no reading",
  "same-point": "the same point once more",
};
const LISTED = 20;

/** What would be taken over, what is left out and why, and what is wrong. */
export function ImportOutcome({ preview, noun }: { readonly preview: ImportPreview; readonly noun: string }) {
  const { left_out, problems } = preview;
  return (
    <>
      <p data-import-count={preview.count}>
        <b>{count(preview.count, noun)}</b> can be taken over
        {left_out.length > 0 && `, ${count(left_out.length, "row")} left out`}.
      </p>
      {left_out.length > 0 && (
        <ul className="notes">
          {left_out.slice(0, LISTED).map((row) => (
            <li key={row.line}>
              Line {row.line}
              {row.id !== null && ` (${row.id})`}: {reasons[row.reason]}
              {row.value !== "" && `, "${row.value}"`}
            </li>
          ))}
          {left_out.length > LISTED && <li>and {left_out.length - LISTED} more</li>}
        </ul>
      )}
      {problems.length > 0 && <ProblemList problems={problems} />}
    </>
  );
}
