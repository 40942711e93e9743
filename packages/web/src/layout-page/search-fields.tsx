import type { Plan } from "@causey/engine/plan";
import { useDesk } from "../desk/desk.ts";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { NumberField } from "../fields/number-field.tsx";

/** What the search of the line goes by, and what the laying is allowed to miss. */
export function SearchFields({ plan }: { readonly plan: Plan }) {
  const desk = useDesk();
  const { layout, units } = plan;
  const change = (part: Partial<Plan["layout"]>): void =>
    desk.plan.edit({ type: "set-layout", layout: { ...layout, ...part } });
  const line = layout.lines[0];
  return (
    <FieldGroup
      title="Search"
      note="Rules that a finished line must keep. A finer sweep finds better lines and takes longer."
    >
      <div className="fields">
        <NumberField
          label="Headings are swept in steps of"
          unit="degrees"
          least={1}
          most={90}
          value={layout.heading_step_deg}
          onTake={(heading_step_deg) => change({ heading_step_deg })}
        />
        <NumberField
          label="Steepest deck"
          unit="%"
          scale={100}
          least={0.1}
          most={50}
          value={layout.max_grade}
          onTake={(max_grade) => change({ max_grade })}
        />
        <LengthField
          label="Clear under the modules, at least"
          description="Ground to underside at every joint; more raises the deck."
          size="small"
          units={units}
          least_m={0}
          value={layout.min_clear_mm / 1000}
          onTake={(metres) => change({ min_clear_mm: Math.round(metres * 100_000) / 100 })}
        />
        <LengthField
          label="A place to pass at least every"
          empty="none asked for"
          optional
          units={units}
          value={layout.passing_every_m}
          onTake={(passing_every_m) => change({ passing_every_m })}
        />
        <LengthField
          label="A support may be laid off by"
          description="Either way; within it the parts still fit."
          size="small"
          units={units}
          least_m={0}
          value={layout.slop_mm / 1000}
          onTake={(metres) => change({ slop_mm: Math.round(metres * 100_000) / 100 })}
        />
        {line && (
          <LengthField
            label="Parts keep to the drawn line within"
            units={units}
            least_m={0.05}
            value={line.corridor_m}
            onTake={(corridor_m) => change({ lines: layout.lines.map((l) => ({ ...l, corridor_m })) })}
          />
        )}
      </div>
    </FieldGroup>
  );
}
