import type { LaidJoint, Layout } from "@causey/engine/layout";
import type { Plan } from "@causey/engine/plan";
import { useDesk } from "../desk/desk.ts";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { RowEditor, type Column } from "../fields/row-editor.tsx";

interface Row extends LaidJoint {
  readonly id: string;
}

const columns: readonly Column<Row>[] = [
  { key: "joint", label: "Joint, by its tag", as: "text", required: true },
  { key: "x", label: "East on the grid", as: "number", unit: "m" },
  { key: "y", label: "North on the grid", as: "number", unit: "m" },
  { key: "deck_m", label: "Top of deck, height", as: "optional-length", empty: null },
  { key: "date", label: "Read on", as: "day", optional: false },
];

/** Joints as they lie in the field: what is laid stays, and the parts after it are fitted anew. */
export function LaidFields({ plan, layout }: { readonly plan: Plan; readonly layout: Layout | null }) {
  const desk = useDesk();
  const { as_laid } = plan.layout;
  const rows = as_laid.map((l, i): Row => ({ ...l, id: `${i}` }));
  return (
    <FieldGroup
      title="As laid"
      note="Read back where the joints came to lie, from the start on. The parts after the last one are fitted anew."
    >
      <RowEditor<Row>
        noun="laid joint"
        rows={rows}
        columns={columns}
        units={plan.units}
        titleOf={(r) => `Joint ${r.joint}`}
        fresh={() => ({ ...nextJoint(layout, as_laid), id: "fresh" })}
        onTake={(next) =>
          desk.plan.edit({
            type: "set-layout",
            layout: {
              ...plan.layout,
              as_laid: next.map(({ joint, x, y, deck_m, date }) => ({ joint, x, y, deck_m, date })),
            },
          })
        }
      />
    </FieldGroup>
  );
}

/** The first joint that is not read back yet, where the plan puts it; heights are read, never assumed. */
function nextJoint(layout: Layout | null, laid: readonly LaidJoint[]): LaidJoint {
  const read = new Set(laid.map((l) => l.joint));
  const joint = layout?.joints.find((j) => !read.has(j.id));
  const date = new Date().toISOString().slice(0, 10);
  return joint
    ? { joint: joint.id, x: round(joint.x), y: round(joint.y), deck_m: null, date }
    : { joint: "J1", x: 0, y: 0, deck_m: null, date };
}

const round = (metres: number): number => Math.round(metres * 1000) / 1000;
