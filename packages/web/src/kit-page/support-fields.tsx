import { Button } from "@mantine/core";
import { readyKits } from "@causey/data/kits";
import type { SupportKind } from "@causey/engine/kit";
import type { Plan } from "@causey/engine/plan";
import { ChoiceField } from "../fields/choice-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { useKit } from "./use-kit.ts";

/** Every support that a ready kit knows, each once. */
const known: readonly SupportKind[] = readyKits
  .flatMap((k) => k.supports)
  .filter((s, i, all) => all.findIndex((t) => t.id === s.id && t.form === s.form) === i);

/** What stands on the ground: which kinds may be used, their heights, anchors and where they may stand. */
export function SupportFields({ plan }: { readonly plan: Plan }) {
  const { kit, change } = useKit(plan);
  const put = (i: number, some: Partial<SupportKind>): void =>
    change({ supports: kit.supports.with(i, { ...kit.supports[i]!, ...some }) });
  const others = known.filter((s) => !kit.supports.some((own) => own.id === s.id));
  return (
    <FieldGroup
      title="Supports"
      note="The search takes the cheapest kind that may stand at a joint and reaches its height."
    >
      {kit.supports.map((support, i) => (
        <fieldset key={support.id} className="row-fields" data-support={support.id}>
          <legend>{support.name}</legend>
          <div className="fields">
            <LengthField
              label="Least height"
              units={plan.units}
              size="small"
              least_m={0}
              value={support.height_min_mm / 1000}
              onTake={(metres) => put(i, { height_min_mm: metres * 1000 })}
            />
            <LengthField
              label="Greatest height"
              units={plan.units}
              size="small"
              least_m={0}
              value={support.height_max_mm / 1000}
              onTake={(metres) => put(i, { height_max_mm: metres * 1000 })}
            />
            <LengthField
              label="Only on ground above"
              units={plan.units}
              optional
              empty="on any ground"
              value={support.stands.ground_above_m}
              onTake={(ground_above_m) => put(i, { stands: { ...support.stands, ground_above_m } })}
            />
            {support.anchor && (
              <>
                <NumberField
                  label="Stakes"
                  whole
                  least={1}
                  value={support.anchor.count}
                  onTake={(n) => put(i, { anchor: { ...support.anchor!, count: n } })}
                />
                <LengthField
                  label="Stakes in the ground"
                  units={plan.units}
                  size="small"
                  least_m={0.1}
                  value={support.anchor.embedment_mm / 1000}
                  onTake={(metres) => put(i, { anchor: { ...support.anchor!, embedment_mm: metres * 1000 } })}
                />
              </>
            )}
          </div>
          {kit.supports.length > 1 && (
            <Button
              variant="default"
              size="compact-sm"
              onClick={() => change({ supports: kit.supports.toSpliced(i, 1) })}
            >
              Do without {support.name}
            </Button>
          )}
        </fieldset>
      ))}
      {others.length > 0 && (
        <div className="fields">
          <ChoiceField
            label="Add a support"
            value=""
            choices={[
              { value: "", words: "choose one" },
              ...others.map((s) => ({ value: s.id, words: s.name })),
            ]}
            onTake={(id) => {
              const support = others.find((s) => s.id === id);
              if (support) change({ supports: [...kit.supports, support] });
            }}
          />
        </div>
      )}
    </FieldGroup>
  );
}
