import { Button } from "@mantine/core";
import type { Price, TakeOff } from "@causey/engine/materials";
import type { Plan } from "@causey/engine/plan";
import type { KnownItem, MergeWay, QuoteTable } from "@causey/io/prices";
import { ChoiceField } from "../../fields/choice-field.tsx";
import { useAfterFields } from "../../fields/use-after-fields.ts";
import { Dialog } from "../../frame/panel.tsx";
import { count } from "../../show/show.ts";
import { KeptMoney } from "../kept-money.tsx";
import { MergeOutcome } from "./merge-outcome.tsx";
import { QuoteColumnFields } from "./quote-column-fields.tsx";
import { QuoteRowFields } from "./quote-row-fields.tsx";
import { useQuote } from "./use-quote.ts";

interface Props {
  readonly plan: Plan;
  readonly table: QuoteTable;
  /** The list that is there; null when it cannot be read, so that nothing can be added to it. */
  readonly there: readonly Price[] | null;
  readonly known: readonly KnownItem[];
  readonly needs: TakeOff | null;
  readonly onTake: (prices: readonly Price[], way: MergeWay) => void;
  readonly onClose: () => void;
}

const wayWords: Readonly<Record<MergeWay, string>> = {
  add: "A price of the same item and length is replaced, the others stay.",
  replace: "Only these prices are left.",
};
const unreadable = "It cannot be read, so nothing can be added to it.";
const none: readonly Price[] = [];

/** Columns, items, and what would come of the list; only then is anything changed. */
export default function PriceImportDialog({ plan, table, there, known, needs, onTake, onClose }: Props) {
  const quote = useQuote(table, there ?? none, known, there === null ? "replace" : "add");
  const { choice, outcome, way } = quote;
  const prices = outcome?.read.prices ?? none;
  const isReady =
    outcome !== null && prices.length > 0 && !outcome.problems.some((p) => p.severity === "error");
  const currency = prices[0]?.currency ?? plan.money.currency;
  const press = useAfterFields(() => outcome && onTake(outcome.merged.prices, way));
  return (
    <Dialog title="Take in a price list" closeWords="Close without a change" onClose={onClose}>
      <p className="quiet">
        <b>{table.file}</b>, {count(table.rows.length, "row")}. Prices are kept before tax, each with its day
        and source.
      </p>
      <QuoteColumnFields table={table} choice={choice} onTake={quote.choose} />
      {choice.columns.item !== null && (
        <QuoteRowFields
          rows={quote.rows}
          choice={choice}
          known={known}
          items={quote.items}
          onItem={quote.setItem}
        />
      )}
      <div className="field-group">
        <ChoiceField<MergeWay>
          label="The list that is there"
          value={way}
          description={there === null ? unreadable : wayWords[way]}
          choices={[
            { value: "add", words: "Add to the list", barred: there === null },
            { value: "replace", words: "Replace the list" },
          ]}
          onTake={quote.setWay}
        />
      </div>
      <div aria-live="polite" className="quote-outcome">
        {quote.missing !== null && <p className="quiet">{quote.missing}</p>}
        {outcome && (
          <MergeOutcome {...outcome} way={way} left={table.rows.length - quote.items.size} needs={needs} />
        )}
        {isReady && currency !== plan.money.currency && (
          <KeptMoney plan={plan} from={plan.money.currency} to={currency} />
        )}
      </div>
      <div className="file-row">
        <Button disabled={!isReady} {...press}>
          {isReady
            ? `${way === "add" ? "Add" : "Replace the list with"} ${count(prices.length, "price")}`
            : "Take over"}
        </Button>
      </div>
    </Dialog>
  );
}
