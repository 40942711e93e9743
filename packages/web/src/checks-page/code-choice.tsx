import { tables } from "@causey/data/tables";
import { designCodes } from "@causey/engine/codes";
import type { Plan } from "@causey/engine/plan";
import { ChoiceField } from "../fields/choice-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { useDesk } from "../desk/desk.ts";

const NEW = "";

/** The design code that timber is held against, and whether the timber has lain out before. */
export function CodeChoice({ plan }: { readonly plan: Plan }) {
  const desk = useDesk();
  const { value: proof, change } = useSection(plan, "proof");
  const { used_timber: used } = proof;
  const { species, grade } = plan.kit.lumber;
  const grades = [...tables.used_timber];
  return (
    <>
      <ChoiceField
        label="Design code"
        value={plan.code}
        choices={designCodes.map(({ id, title, woods }) => {
          const knows = woods(tables).some((w) => w.species === species && w.grade === grade);
          return {
            value: id as Plan["code"],
            words: knows ? title : `${title}: no values for this kit's timber`,
            barred: !knows && id !== plan.code,
          };
        })}
        onTake={(code) => desk.plan.edit({ type: "set-section", section: "code", value: code })}
      />
      <ChoiceField
        label="Timber of the kit"
        value={used?.grade ?? NEW}
        choices={[
          { value: NEW, words: "new" },
          ...grades.map(({ id, name }) => ({ value: id, words: `used: ${name}` })),
        ]}
        onTake={(id) => change({ used_timber: id === NEW ? null : { grade: id, cycles: used?.cycles ?? 1 } })}
      />
      {used && (
        <NumberField
          label="Times it was laid before"
          whole
          least={0}
          most={100}
          value={used.cycles}
          onTake={(cycles) => change({ used_timber: { ...used, cycles } })}
        />
      )}
    </>
  );
}
