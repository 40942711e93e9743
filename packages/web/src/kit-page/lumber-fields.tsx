import { tables } from "@causey/data/tables";
import { designCode } from "@causey/engine/codes";
import { fastenerChoices, preservativeChoices, type Kit, type MaterialChoice } from "@causey/engine/kit";
import { timberRow, type TimberRow } from "@causey/engine/materials";
import type { Plan } from "@causey/engine/plan";
import { ChoiceField } from "../fields/choice-field.tsx";
import { useKit } from "./use-kit.ts";

/** Woods that the plan's design code has values for, and the kit's own even when it has none. */
function woodsOf({ code, kit }: Pick<Plan, "code" | "kit">): readonly TimberRow[] {
  const found = designCode(code);
  const woods = found.ok ? found.value.woods(tables) : [];
  const { species, grade } = kit.lumber;
  const own = timberRow(tables, species, grade);
  return own && !woods.some((w) => w.species === species && w.grade === grade) ? [...woods, own] : woods;
}

/** What a choice says for itself: a barred one why it is barred, another what to mind. */
const wordsOf = ({ name, barred, note }: MaterialChoice): string =>
  barred !== null ? `${name}: not here, ${barred}` : note === "" ? name : `${name} (${note})`;

const offered = (choices: readonly MaterialChoice[]) =>
  choices.map((c) => ({ value: c.id, words: wordsOf(c), barred: c.barred !== null }));

/** Species, grade, treatment, and the screws that stand it. What does not go with the place is shown and cannot be chosen. */
export function LumberFields({ plan }: { readonly plan: Plan }) {
  const { kit, change } = useKit(plan);
  const lumber = (some: Partial<Kit["lumber"]>): void => change({ lumber: { ...kit.lumber, ...some } });
  const woods = woodsOf({ code: plan.code, kit });
  const grades = woods.filter((g) => g.species === kit.lumber.species);
  const { exposure } = plan.water;
  const screws = fastenerChoices(tables.fasteners, "wood-screw", kit.lumber, tables.preservatives, exposure);
  return (
    <>
      <ChoiceField
        label="Species"
        value={kit.lumber.species}
        choices={[...new Set(woods.map((w) => w.species))].map((value) => ({
          value,
          words: value.replaceAll("-", " "),
        }))}
        onTake={(species) =>
          lumber({
            species,
            grade: woods.find((g) => g.species === species)?.grade ?? kit.lumber.grade,
          })
        }
      />
      <ChoiceField
        label="Grade"
        value={kit.lumber.grade}
        choices={grades.map((g) => ({ value: g.grade, words: g.name }))}
        onTake={(grade) => lumber({ grade })}
      />
      <ChoiceField
        label="Preservative"
        description="The least treatment first; what guidance bars in wetlands, or the site's water forbids, cannot be chosen."
        value={kit.lumber.preservative ?? (kit.lumber.treatment === "treated" ? "unknown" : "none")}
        choices={[
          { value: "none", words: "untreated" },
          ...offered(preservativeChoices(tables.preservatives, exposure)),
          { value: "unknown", words: "treated, not known with what" },
        ]}
        onTake={(id) =>
          lumber({
            treatment: id === "none" ? "none" : "treated",
            preservative: id === "none" || id === "unknown" ? null : id,
            ...(id === "none" ? { incised: false } : {}),
          })
        }
      />
      <ChoiceField
        label="Screws of the frame"
        value={kit.cross_pieces.screw}
        choices={offered(screws)}
        onTake={(screw) =>
          change({
            cross_pieces: { ...kit.cross_pieces, screw },
            platform: { ...kit.platform, screw },
            curb: kit.curb && { ...kit.curb, screw },
          })
        }
      />
      {kit.deck.kind === "boards" && (
        <ChoiceField
          label="Screws of the deck boards"
          value={kit.deck.screw}
          choices={offered(screws)}
          onTake={(screw) => kit.deck.kind === "boards" && change({ deck: { ...kit.deck, screw } })}
        />
      )}
    </>
  );
}
