import { readyKits } from "@causey/data/kits";
import { tables } from "@causey/data/tables";
import type { Kit } from "@causey/engine/kit";
import type { Plan } from "@causey/engine/plan";
import { useDesk } from "../desk/desk.ts";
import { ChoiceField } from "../fields/choice-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { DeckFields } from "./deck-fields.tsx";
import { LumberFields } from "./lumber-fields.tsx";
import { useKit } from "./use-kit.ts";

const sizes = tables.sizes.map((s) => ({ value: s.id, words: s.id }));

/** The recipe of modules and platforms. */
export function RecipeFields({ plan }: { readonly plan: Plan }) {
  return (
    <>
      <KitChoice plan={plan} />
      <ModuleFields plan={plan} />
      <DeckFields plan={plan} />
      <PlatformFields plan={plan} />
    </>
  );
}

/** A ready kit to start from; the plan then holds its own copy. */
function KitChoice({ plan }: { readonly plan: Plan }) {
  const desk = useDesk();
  const { kit, change } = useKit(plan);
  return (
    <FieldGroup title="Kit" note={kit.note}>
      <div className="fields">
        <ChoiceField
          label="Start from a ready kit"
          value=""
          choices={[
            { value: "", words: "keep this one" },
            ...readyKits.map((k) => ({ value: k.id, words: k.name })),
          ]}
          onTake={(id) => {
            const ready = readyKits.find((k) => k.id === id);
            if (ready) desk.plan.edit({ type: "set-kit", kit: ready });
          }}
        />
        <TextField required label="Name" value={kit.name} onTake={(name) => change({ name })} />
        <LumberFields plan={plan} />
        <NumberField
          label="Spare modules"
          unit="%"
          scale={100}
          least={0}
          most={100}
          value={kit.spares_share}
          onTake={(spares_share) => change({ spares_share })}
        />
      </div>
    </FieldGroup>
  );
}

function ModuleFields({ plan }: { readonly plan: Plan }) {
  const { kit, change } = useKit(plan);
  const { units } = plan;
  const cross = (some: Partial<Kit["cross_pieces"]>): void =>
    change({ cross_pieces: { ...kit.cross_pieces, ...some } });
  return (
    <FieldGroup title="Module">
      <div className="fields">
        {kit.lengths_mm.map((mm, i) => (
          <LengthField
            key={i === 0 ? "first" : `length ${i + 1}`}
            label={`Body length ${i + 1}`}
            units={units}
            size="small"
            least_m={0.3}
            value={mm / 1000}
            onTake={(metres) => change({ lengths_mm: kit.lengths_mm.with(i, metres * 1000) })}
          />
        ))}
        <LengthField
          label="Gap at a joint"
          units={units}
          size="small"
          least_m={0}
          value={kit.joint_gap_mm / 1000}
          onTake={(metres) => change({ joint_gap_mm: metres * 1000 })}
        />
        <ChoiceField<"2" | "3">
          label="Stringers"
          value={kit.stringers.count === 3 ? "3" : "2"}
          choices={[
            { value: "2", words: "two" },
            { value: "3", words: "three" },
          ]}
          onTake={(n) => change({ stringers: { ...kit.stringers, count: n === "3" ? 3 : 2 } })}
        />
        <ChoiceField
          label="Stringers of"
          value={kit.stringers.size}
          choices={sizes}
          onTake={(size) => change({ stringers: { ...kit.stringers, size } })}
        />
        <LengthField
          label="Stringers, outside to outside"
          units={units}
          size="small"
          least_m={0.1}
          value={kit.stringers.overall_mm / 1000}
          onTake={(metres) => change({ stringers: { ...kit.stringers, overall_mm: metres * 1000 } })}
        />
        <ChoiceField
          label="Cross pieces of"
          value={kit.cross_pieces.size}
          choices={sizes}
          onTake={(size) => cross({ size })}
        />
        <ChoiceField<"flat" | "edge">
          label="Cross pieces laid"
          value={kit.cross_pieces.lay}
          choices={[
            { value: "flat", words: "flat" },
            { value: "edge", words: "on edge" },
          ]}
          onTake={(lay) => cross({ lay })}
        />
        <LengthField
          label="Cross pieces, centre to centre"
          units={units}
          size="small"
          least_m={0.1}
          value={kit.cross_pieces.spacing_mm / 1000}
          onTake={(metres) => cross({ spacing_mm: metres * 1000 })}
        />
        <ChoiceField<"plain" | "catch-board">
          label="End of a module"
          value={kit.end.kind}
          choices={[
            { value: "plain", words: "plain" },
            { value: "catch-board", words: "catch board for the next one" },
          ]}
          onTake={(kind) =>
            change({ end: kind === "plain" ? { kind } : { kind, size: "2x6", projection_mm: 76.2 } })
          }
        />
        <ChoiceField
          label="Curb of"
          value={kit.curb?.size ?? ""}
          choices={[{ value: "", words: "no curb" }, ...sizes]}
          onTake={(size) =>
            change({
              curb:
                size === ""
                  ? null
                  : { screw: kit.cross_pieces.screw, screw_spacing_mm: 609.6, ...kit.curb, size },
            })
          }
        />
      </div>
    </FieldGroup>
  );
}

function PlatformFields({ plan }: { readonly plan: Plan }) {
  const { kit, change } = useKit(plan);
  const { platform } = kit;
  const put = (some: Partial<Kit["platform"]>): void => change({ platform: { ...platform, ...some } });
  return (
    <FieldGroup title="Turning platform">
      <div className="fields">
        <LengthField
          label="Side"
          units={plan.units}
          size="small"
          least_m={0.3}
          value={platform.side_mm / 1000}
          onTake={(metres) => put({ side_mm: metres * 1000 })}
        />
        <LengthField
          optional
          empty="each support's own"
          label="Sills under its ends"
          description="Under the two edges that its stringers end at; a longer own sill stays."
          units={plan.units}
          size="small"
          least_m={0.3}
          value={platform.edge_sill_mm === undefined ? null : platform.edge_sill_mm / 1000}
          onTake={(metres) => {
            const { edge_sill_mm: _, ...rest } = platform;
            change({ platform: metres === null ? rest : { ...rest, edge_sill_mm: metres * 1000 } });
          }}
        />
        <ChoiceField<"1" | "2">
          label="Carried"
          value={platform.pieces === 2 ? "2" : "1"}
          choices={[
            { value: "1", words: "whole" },
            { value: "2", words: "in two halves, joined on the spot" },
          ]}
          onTake={(n) => put({ pieces: n === "2" ? 2 : 1 })}
        />
        <ChoiceField
          label="Its stringers of"
          value={platform.stringers.size}
          choices={sizes}
          onTake={(size) => put({ stringers: { ...platform.stringers, size } })}
        />
        <NumberField
          label="Its stringers"
          whole
          least={2}
          value={platform.stringers.count}
          onTake={(n) => put({ stringers: { ...platform.stringers, count: n } })}
        />
        <NumberField
          label="Its rows of cross pieces"
          whole
          least={2}
          value={platform.cross_pieces.count}
          onTake={(n) => put({ cross_pieces: { ...platform.cross_pieces, count: n } })}
        />
        <ChoiceField<"yes" | "no">
          label="Ramp at the start"
          value={kit.ramp ? "yes" : "no"}
          choices={[
            { value: "no", words: "none: the deck is stepped onto" },
            { value: "yes", words: "a ramp" },
          ]}
          onTake={(answer) =>
            change({
              ramp:
                answer === "yes"
                  ? { lengths_mm: [...kit.lengths_mm].sort((a, b) => a - b), max_grade: 0.125 }
                  : null,
            })
          }
        />
        {kit.ramp && (
          <NumberField
            label="Steepest ramp, rise over run"
            least={0.01}
            most={0.5}
            value={kit.ramp.max_grade}
            onTake={(max_grade) => change({ ramp: { ...kit.ramp!, max_grade } })}
          />
        )}
      </div>
    </FieldGroup>
  );
}
