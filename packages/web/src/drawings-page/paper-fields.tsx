import type { Plan } from "@causey/engine/plan";
import { ChoiceField } from "../fields/choice-field.tsx";
import { DayField } from "../fields/day-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useSection } from "../fields/use-section.ts";

/** What stands in the title block of every sheet. */
export function PaperFields({ plan }: { readonly plan: Plan }) {
  const { value: papers, change } = useSection(plan, "papers");
  return (
    <div className="fields">
      <ChoiceField
        label="Paper"
        value={papers.sheet}
        choices={[
          { value: "letter", words: "US letter, 8.5 x 11 in" },
          { value: "a4", words: "A4" },
        ]}
        onTake={(sheet) => change({ sheet })}
      />
      <TextField label="Applicant" value={papers.applicant} onTake={(applicant) => change({ applicant })} />
      <TextField label="Waterbody" value={papers.waterbody} onTake={(waterbody) => change({ waterbody })} />
      <TextField label="File no." value={papers.file_no} onTake={(file_no) => change({ file_no })} />
      <TextField
        label="Prepared by"
        value={papers.prepared_by}
        onTake={(prepared_by) => change({ prepared_by })}
      />
      <DayField label="Day of the papers" optional value={papers.date} onTake={(date) => change({ date })} />
      <div className="fields-wide">
        <TextField
          long
          label="Neighbours"
          description="Names and addresses, one a line."
          value={papers.adjoining.join("\n")}
          onTake={(text) =>
            change({
              adjoining: text
                .split("\n")
                .map((t) => t.trim())
                .filter((t) => t !== ""),
            })
          }
        />
      </div>
    </div>
  );
}
