import { Button } from "@mantine/core";
import type { Price, TakeOff } from "@causey/engine/materials";
import { useMemo, useState } from "react";
import { DayField } from "../fields/day-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { YesField } from "../fields/yes-field.tsx";
import { Dialog } from "../frame/panel.tsx";
import { count } from "../show/show.ts";
import { MissingAfter } from "./missing-after.tsx";
import { changedCount, withPrices, type PriceDraft } from "./price-changes.ts";

interface Props {
  readonly prices: readonly Price[];
  readonly needs: TakeOff | null;
  readonly onTake: (prices: readonly Price[]) => void;
  readonly onClose: () => void;
}

/**
 * All prices of the list; those that are changed get one day and one source, those no longer stocked are taken out,
 * and all of it is kept together.
 */
export default function PricesDialog({ prices, needs, onTake, onClose }: Props) {
  const [draft, setDraft] = useState<PriceDraft>({ prices: new Map(), gone: new Set() });
  const [told, setTold] = useState(() => ({ date: today(), source: "" }));
  const changed = changedCount(prices, draft);
  const gone = draft.gone.size;
  const isReady = changed + gone > 0 && (changed === 0 || told.source.trim() !== "");
  const next = useMemo(() => withPrices(prices, draft, told), [prices, draft, told]);
  return (
    <Dialog title="Change prices" closeWords="Close without a change" onClose={onClose}>
      <p className="quiet">Each price is for one pack, before tax. It is kept with its day and source.</p>
      <div className="fields price-fields">
        {prices.map((price, i) => (
          // Rows of one list are told apart by their place alone: two may sell the same thing.
          // oxlint-disable-next-line react/no-array-index-key
          <PriceRow key={i} price={price} at={i} draft={draft} onDraft={setDraft} />
        ))}
      </div>
      <div className="fields">
        <DayField
          label="Day of the new prices"
          value={told.date}
          onTake={(date) => setTold((last) => ({ ...last, date }))}
        />
        <TextField
          required
          label="Source of the new prices"
          description="The yard or catalogue."
          value={told.source}
          onTake={(source) => setTold((last) => ({ ...last, source }))}
        />
      </div>
      <div aria-live="polite" className="quote-outcome">
        {gone > 0 && <MissingAfter needs={needs} prices={next} />}
      </div>
      <div className="file-row">
        <Button disabled={!isReady} onClick={() => onTake(next)}>
          {buttonWords(changed, gone)}
        </Button>
        {changed > 0 && told.source.trim() === "" && <span className="quiet">Say who told the prices.</span>}
      </div>
    </Dialog>
  );
}

interface RowProps {
  readonly price: Price;
  readonly at: number;
  readonly draft: PriceDraft;
  readonly onDraft: (change: (last: PriceDraft) => PriceDraft) => void;
}

function PriceRow({ price, at, draft, onDraft }: RowProps) {
  const mark = (isGone: boolean): void =>
    onDraft((last) => {
      const gone = new Set(last.gone);
      if (isGone) gone.add(at);
      else gone.delete(at);
      return { ...last, gone };
    });
  return (
    <div className={draft.gone.has(at) ? "price-row price-gone" : "price-row"}>
      <NumberField
        label={price.description}
        description={rowWords(price)}
        unit={price.currency}
        least={0}
        value={draft.prices.get(at) ?? price.price}
        onTake={(value) => onDraft((last) => ({ ...last, prices: new Map([...last.prices, [at, value]]) }))}
      />
      <YesField
        label="not stocked"
        name={`${price.description}: not stocked`}
        value={draft.gone.has(at)}
        onTake={mark}
      />
    </div>
  );
}

function buttonWords(changed: number, gone: number): string {
  if (changed === 0 && gone === 0) return "Keep the prices";
  const out = `take out ${count(gone, "price")}`;
  if (changed === 0) return `T${out.slice(1)}`;
  return `Keep ${count(changed, "price")}${gone === 0 ? "" : `, ${out}`}`;
}

const today = (): string => new Date().toISOString().slice(0, 10);

const rowWords = ({ item, length_mm, pack, date, source }: Price): string =>
  [
    item,
    ...(length_mm === null ? [] : [`${length_mm} mm`]),
    ...(pack === 1 ? [] : [`pack of ${pack}`]),
    `${date}, ${source}`,
  ].join(" · ");
