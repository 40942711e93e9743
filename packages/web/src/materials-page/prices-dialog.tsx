import { Button } from "@mantine/core";
import type { Price } from "@causey/engine/materials";
import { useState } from "react";
import { DayField } from "../fields/day-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { Dialog } from "../frame/panel.tsx";
import { count } from "../show/show.ts";
import { changedCount, withPrices, type PriceDraft } from "./price-changes.ts";

interface Props {
  readonly prices: readonly Price[];
  readonly onTake: (prices: readonly Price[]) => void;
  readonly onClose: () => void;
}

/** All prices of the list; those that are changed get one day and one source, and are kept together. */
export default function PricesDialog({ prices, onTake, onClose }: Props) {
  const [draft, setDraft] = useState<PriceDraft>(new Map());
  const [told, setTold] = useState(() => ({ date: today(), source: "" }));
  const changed = changedCount(prices, draft);
  const isReady = changed > 0 && told.source.trim() !== "";
  return (
    <Dialog title="Change prices" closeWords="Close without a change" onClose={onClose}>
      <p className="quiet">Each price is for one pack, before tax. It is kept with its day and source.</p>
      <div className="fields price-fields">
        {prices.map((price, i) => (
          <NumberField
            // Rows of one list are told apart by their place alone: two may sell the same thing.
            // oxlint-disable-next-line react/no-array-index-key
            key={i}
            label={price.description}
            description={rowWords(price)}
            unit={price.currency}
            least={0}
            value={draft.get(i) ?? price.price}
            onTake={(value) => setDraft((last) => new Map([...last, [i, value]]))}
          />
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
      <div className="file-row">
        <Button disabled={!isReady} onClick={() => onTake(withPrices(prices, draft, told))}>
          {changed === 0 ? "Keep the prices" : `Keep ${count(changed, "price")}`}
        </Button>
        {changed > 0 && told.source.trim() === "" && <span className="quiet">Say who told the prices.</span>}
      </div>
    </Dialog>
  );
}

const today = (): string => new Date().toISOString().slice(0, 10);

const rowWords = ({ item, length_mm, pack, date, source }: Price): string =>
  [
    item,
    ...(length_mm === null ? [] : [`${length_mm} mm`]),
    ...(pack === 1 ? [] : [`pack of ${pack}`]),
    `${date}, ${source}`,
  ].join(" · ");
