import { deckChoices, deckOf } from "@causey/data/decks";
import { tables } from "@causey/data/tables";
import type { Deck } from "@causey/engine/kit";
import type { Plan } from "@causey/engine/plan";
import { ChoiceField } from "../fields/choice-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { useKit } from "./use-kit.ts";

const kindWords: Readonly<Record<Deck["kind"], string>> = {
  boards: "boards",
  mesh: "mesh",
  "moulded-grating": "moulded grating",
  "bar-grating": "bar grating",
  plywood: "plywood",
  "plastic-panel": "plastic panel",
};
const kinds = Object.keys(kindWords) as Deck["kind"][];

/** The deck: what it is, as the trade sells it, and its width. */
export function DeckFields({ plan }: { readonly plan: Plan }) {
  const { kit, change } = useKit(plan);
  const { deck } = kit;
  const offered = deckChoices.filter((c) => c.deck.kind === deck.kind);
  const put = (id: string): void => {
    const choice = deckChoices.find((c) => c.id === id);
    if (choice) change({ deck: deckOf(choice, deck.width_mm) });
  };
  const current = offered.find((c) => JSON.stringify(deckOf(c, deck.width_mm)) === JSON.stringify(deck));
  return (
    <FieldGroup title="Deck" note={current?.note ?? "As the recipe says: no row of the table."}>
      <div className="fields">
        <ChoiceField<Deck["kind"]>
          label="Kind of deck"
          value={deck.kind}
          choices={kinds
            .filter((k) => k === deck.kind || deckChoices.some((c) => c.deck.kind === k))
            .map((value) => ({ value, words: kindWords[value] }))}
          onTake={(kind) => put(deckChoices.find((c) => c.deck.kind === kind)?.id ?? "")}
        />
        <ChoiceField
          label="Product, no maker"
          value={current?.id ?? ""}
          choices={[
            ...(current ? [] : [{ value: "", words: "as the recipe says" }]),
            ...offered.map((c) => ({
              value: c.id,
              words: c.status === "memory" ? `${c.name} (from memory, confirm)` : c.name,
            })),
          ]}
          onTake={put}
        />
        <LengthField
          label="Width of the deck"
          units={plan.units}
          size="small"
          least_m={0.2}
          value={deck.width_mm / 1000}
          onTake={(metres) => change({ deck: { ...deck, width_mm: metres * 1000 } })}
        />
        {deck.kind === "boards" && (
          <>
            <LengthField
              label="Gap between boards"
              units={plan.units}
              size="small"
              least_m={0}
              value={deck.gap_mm / 1000}
              onTake={(metres) => change({ deck: { ...deck, gap_mm: metres * 1000 } })}
            />
            <ChoiceField
              label="Boards of"
              value={deck.size}
              choices={tables.sizes.map((s) => ({ value: s.id, words: s.id }))}
              onTake={(size) => change({ deck: { ...deck, size } })}
            />
          </>
        )}
      </div>
    </FieldGroup>
  );
}
