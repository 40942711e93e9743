import { Button, FileButton } from "@mantine/core";
import { tables } from "@causey/data/tables";
import type { Price, TakeOff } from "@causey/engine/materials";
import { knownItems, type MergeWay, type QuoteTable } from "@causey/io/prices";
import { lazy, Suspense, useMemo, useState } from "react";
import type { PlanSnapshot } from "../api/types.ts";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { ProblemList } from "../frame/problem-list.tsx";
import { count } from "../show/show.ts";
import { KeptMoney } from "./kept-money.tsx";
import { inCurrency } from "./price-changes.ts";
import { usePriceList } from "./use-price-list.ts";

const PricesDialog = lazy(() => import("./prices-dialog.tsx"));
const PriceImportDialog = lazy(() => import("./price-import/price-import-dialog.tsx"));

interface Props {
  readonly snapshot: PlanSnapshot;
  /** What the walkway needs; null while it is not worked out. */
  readonly needs: TakeOff | null;
  readonly at: React.Ref<HTMLDivElement>;
}

/** The price list and its currency: prices from a file, other prices, or another currency. */
export function PriceFields({ snapshot, needs, at }: Props) {
  const { plan } = snapshot;
  const money = useSection(plan, "money");
  const list = usePriceList(snapshot);
  const [open, setOpen] = useState<"prices" | QuoteTable | null>(null);
  const [came, setCame] = useState<string | null>(null);
  const known = useMemo(() => knownItems(tables, list.prices ?? [], needs), [list.prices, needs]);
  const close = (): void => setOpen(null);

  const take = (prices: readonly Price[], currency: string, name?: string): void => {
    close();
    if (currency !== plan.money.currency) setCame(plan.money.currency);
    void list.takePrices(prices, currency, name);
  };
  const takeCurrency = (words: string): void => {
    const currency = words.toUpperCase();
    if (list.prices !== null && list.prices.length > 0)
      return take(inCurrency(list.prices, currency), currency);
    setCame(plan.money.currency);
    money.change({ currency });
  };
  const openFile = async (file: File): Promise<void> => setOpen(await list.openFile(file));
  const takeFile = (table: QuoteTable, prices: readonly Price[], way: MergeWay): void =>
    take(
      prices,
      prices[0]?.currency ?? plan.money.currency,
      way === "replace" ? csvName(table.file) : undefined,
    );
  return (
    <FieldGroup
      at={at}
      title="Price list"
      note="One currency for the plan. A list is any CSV file with its columns named in the first line, such as a yard's quote: you choose what each column means, and what each row is."
    >
      <div className="file-row">
        <span>
          File: <b>{plan.prices.file}</b>
          {list.prices && `, ${count(list.prices.length, "price")}`}
        </span>
        <FileButton accept=".csv,.txt,.tsv,text/csv" onChange={(file) => file && void openFile(file)}>
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
          onClick={() => setOpen("prices")}
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
      <div aria-live="polite" className="quote-outcome">
        {list.broken !== null && <p className="plans-broken">{list.broken}</p>}
        {list.problems.length > 0 && <ProblemList problems={list.problems} />}
        {came !== null && came !== plan.money.currency && (
          <KeptMoney plan={plan} from={came} to={plan.money.currency} />
        )}
      </div>
      <Suspense>
        {open === "prices" && list.prices && (
          <PricesDialog
            prices={list.prices}
            needs={needs}
            onTake={(prices) => take(prices, plan.money.currency)}
            onClose={close}
          />
        )}
        {open !== null && open !== "prices" && (
          <PriceImportDialog
            plan={plan}
            table={open}
            there={list.prices}
            known={known}
            needs={needs}
            onTake={(prices, way) => takeFile(open, prices, way)}
            onClose={close}
          />
        )}
      </Suspense>
    </FieldGroup>
  );
}

/** The list is written as CSV, whatever its file was called. */
const csvName = (file: string): string => file.replace(/(\.(csv|txt|tsv))?$/i, ".csv");
