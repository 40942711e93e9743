import type { Plan } from "@causey/engine/plan";
import type { OptionChoice, WalkwayKind } from "@causey/engine/request";
import type { OptionLine } from "@causey/engine/options";
import { ChoiceField } from "../fields/choice-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useSection } from "../fields/use-section.ts";

export const kindWords: Readonly<Record<WalkwayKind, string>> = {
  "no-structure": "No structure",
  "another-season": "Another season",
  "by-boat": "By boat",
  "ground-laid": "Planks on the ground",
  sleepers: "On sleepers",
  "open-crates": "On open crates",
  "post-pairs": "On post pairs",
  "screw-piles": "On screw piles",
  floats: "On floats",
  mats: "Mats",
};
const kinds = Object.keys(kindWords) as WalkwayKind[];

type Answer = OptionChoice["status"] | "not-looked-at";
const answers: readonly { readonly value: Answer; readonly words: string }[] = [
  { value: "not-looked-at", words: "not looked at" },
  { value: "open", words: "still open" },
  { value: "rejected", words: "rejected" },
  { value: "chosen", words: "chosen" },
];

/** What else could be done, and why it was or was not: "no structure" comes first. */
export function Kinds({ plan, lines }: { readonly plan: Plan; readonly lines: readonly OptionLine[] }) {
  const { value: request, change } = useSection(plan, "request");
  const answerTo = (kind: WalkwayKind): OptionChoice | undefined =>
    request.options.find((o) => o.kind === kind);
  const put = (kind: WalkwayKind, status: Answer, reason: string): void => {
    const others = request.options.filter((o) => o.kind !== kind);
    change({ options: status === "not-looked-at" ? others : [...others, { kind, status, reason }] });
  };
  return (
    <FieldGroup
      title="What else could be done"
      note="Least harm first: the permit asks why each of these was or was not taken."
    >
      <ul className="kinds">
        {kinds.map((kind) => {
          const answer = answerTo(kind);
          return (
            <li key={kind} className="kind" data-kind={kind}>
              <ChoiceField<Answer>
                label={kindWords[kind]}
                value={answer?.status ?? "not-looked-at"}
                choices={answers}
                onTake={(status) => put(kind, status, answer?.reason ?? "")}
              />
              {answer && (
                <TextField
                  label={`Why, ${kindWords[kind].toLowerCase()}`}
                  value={answer.reason}
                  onTake={(reason) => put(kind, answer.status, reason)}
                />
              )}
              <KindFacts line={lines.find((l) => l.kind === kind)} />
            </li>
          );
        })}
      </ul>
    </FieldGroup>
  );
}

/** What is known of a kind, and what this place says about it. */
function KindFacts({ line }: { readonly line: OptionLine | undefined }) {
  if (!line) return null;
  return (
    <div className="kind-facts">
      <p className="quiet">
        {line.make_up} Can it come out again: {line.removable}. Against it: {line.against}
      </p>
      {line.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      {line.warnings.map((w) => (
        <p key={w.text} className="kind-warning">
          {w.text}
        </p>
      ))}
    </div>
  );
}
