import { Button, FileButton } from "@mantine/core";
import { lazy, Suspense, useState } from "react";
import type { PlanSnapshot } from "../api/types.ts";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { ProblemList } from "../frame/problem-list.tsx";
import { count } from "../show/show.ts";
import { inCurrency } from "./price-changes.ts";
import { usePriceList } from "./use-price-list.ts";

const PricesDialog = lazy(() => import("./prices-dialog.tsx"));

/** The price list and its currency: another file, other prices, or another currency. */
export function PriceFields({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const { plan } = snapshot;
  const money = useSection(plan, "money");
  const list = usePriceList(snapshot);
  const [isOpen, setOpen] = useState(false);
  const takeCurrency = (words: string): void => {
    const currency = words.toUpperCase();
    if (list.prices === null || list.prices.length === 0) money.change({ currency });
    else void list.takePrices(inCurrency(list.prices, currency), currency);
  };
  return (
    <FieldGroup
      title="Price list"
      note="One currency for the plan. A list is a CSV file with the columns item, description, length_mm or length_ft, pack, price, currency, date, source. A list in another currency brings it with it: labour and the other rates below keep their numbers, so give them anew."
    >
      <div className="file-row">
        <span>
          File: <b>{plan.prices.file}</b>
          {list.prices && `, ${count(list.prices.length, "price")}`}
        </span>
        <FileButton accept=".csv,.txt,.tsv,text/csv" onChange={(file) => file && void list.takeFile(file)}>
          {(props) => (
            <Button {...props} variant="default" size="compact-sm" loading={list.isSending}>
              Take in a price list
            </Button>
          )}
        </FileButton>
        <Button
          variant="default"
          size="compact-sm"
          disabled={list.prices === null || list.prices.length === 0}
          onClick={() => setOpen(true)}
        >
          Change prices
        </Button>
      </div>
      <div className="fields">
        <TextField
          required
          label="Currency"
          description="Three letters, such as USD. The numbers stay: nothing is converted."
          value={plan.money.currency}
          onTake={takeCurrency}
        />
      </div>
      <div aria-live="polite">
        {list.broken !== null && <p className="plans-broken">{list.broken}</p>}
        {list.problems.length > 0 && <ProblemList problems={list.problems} />}
      </div>
      <Suspense>
        {isOpen && list.prices && (
          <PricesDialog
            prices={list.prices}
            onTake={(prices) => {
              setOpen(false);
              void list.takePrices(prices, plan.money.currency);
            }}
            onClose={() => setOpen(false)}
          />
        )}
      </Suspense>
    </FieldGroup>
  );
}
