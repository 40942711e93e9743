import { Button } from "@mantine/core";
import { oldPriceWords, priceSourceWords, type Budget, type Cost } from "@causey/engine/cost";

interface Props {
  readonly budget: Budget;
  readonly cost: Cost;
  /** Days after which the plan calls a price old. */
  readonly age_days: number;
  /** Leads to the fields of the price list. */
  readonly onPriceList: () => void;
}

/** Where the prices come from, warnings of the budget, and the prices that have grown old. */
export function PriceAge({ budget, cost, age_days, onPriceList }: Props) {
  const old = oldPriceWords(budget.old_prices, cost.order.length, age_days);
  return (
    <>
      <PriceSources cost={cost} onPriceList={onPriceList} />
      {(budget.warnings.length > 0 || old !== null) && (
        <section aria-labelledby="money-warnings">
          <h2 id="money-warnings">Look again</h2>
          <ul className="gaps">
            {budget.warnings.map((w) => (
              <li key={w}>{w}</li>
            ))}
            {old !== null && (
              <li>
                <b>Old prices.</b> {old} They are{" "}
                {budget.old_prices
                  .slice(0, 8)
                  .map((p) => `${p.item} (${p.age_days} days)`)
                  .join(", ")}
                {budget.old_prices.length > 8 && ` and ${budget.old_prices.length - 8} more`}.
              </li>
            )}
          </ul>
        </section>
      )}
    </>
  );
}

function PriceSources({ cost, onPriceList }: Pick<Props, "cost" | "onPriceList">) {
  return (
    <section aria-labelledby="price-sources">
      <h2 id="price-sources">Where the prices come from</h2>
      <ul className="gaps">
        {cost.price_sources.map((s) => (
          <li key={`${s.date} ${s.source}`}>
            {s.is_example && <b>An example, not an offer. </b>}
            {priceSourceWords(s)}
          </li>
        ))}
        {cost.price_sources.length === 0 && <li>No line of the order has a price.</li>}
      </ul>
      <div className="file-row">
        <Button variant="default" size="compact-sm" onClick={onPriceList}>
          Go to the price list
        </Button>
      </div>
    </section>
  );
}
