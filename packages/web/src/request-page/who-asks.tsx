import type { Plan } from "@causey/engine/plan";
import { ChoiceField } from "../fields/choice-field.tsx";
import { DayField } from "../fields/day-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useSection } from "../fields/use-section.ts";

type WetFeet = "yes" | "no" | "open";
const wetFeet = { yes: true, no: false, open: null } as const;

/** The people behind the request and what they want to do. */
export function WhoAsks({ plan }: { readonly plan: Plan }) {
  const { value: request, change } = useSection(plan, "request");
  const feet: WetFeet = request.wet_feet_ok === null ? "open" : request.wet_feet_ok ? "yes" : "no";
  return (
    <FieldGroup title="Who asks, and for what">
      <div className="fields">
        <TextField label="Who asks" value={request.requester} onTake={(requester) => change({ requester })} />
        <TextField
          label="Organisation"
          value={request.organisation}
          onTake={(organisation) => change({ organisation })}
        />
        <TextField
          label="How to reach them"
          value={request.contact}
          onTake={(contact) => change({ contact })}
        />
        <DayField
          label="Asked on"
          optional
          value={request.received}
          onTake={(received) => change({ received })}
        />
        <ChoiceField<WetFeet>
          label="Wet feet at high water"
          value={feet}
          choices={[
            { value: "open", words: "not asked yet" },
            { value: "yes", words: "accepted" },
            { value: "no", words: "not accepted" },
          ]}
          onTake={(answer) => change({ wet_feet_ok: wetFeet[answer] })}
        />
        <div className="fields-wide">
          <TextField
            long
            label="Purpose and need"
            description="What is done at the plots, and why it has to be there and then."
            value={request.purpose}
            onTake={(purpose) => change({ purpose })}
          />
        </div>
      </div>
    </FieldGroup>
  );
}
