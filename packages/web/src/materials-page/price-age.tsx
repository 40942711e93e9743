import type { Budget } from "@causey/engine/cost";

/** Warnings of the budget, and the prices that have grown old. */
export function PriceAge({ budget }: { readonly budget: Budget }) {
  if (budget.warnings.length === 0 && budget.old_prices.length === 0) return null;
  return (
    <section aria-labelledby="money-warnings">
      <h2 id="money-warnings">Look again</h2>
      <ul className="gaps">
        {budget.warnings.map((w) => (
          <li key={w}>{w}</li>
        ))}
        {budget.old_prices.length > 0 && (
          <li>
            <b>Old prices.</b> Ask the yard again for{" "}
            {budget.old_prices
              .slice(0, 8)
              .map((p) => `${p.item} (${p.age_days} days)`)
              .join(", ")}
            {budget.old_prices.length > 8 && ` and ${budget.old_prices.length - 8} more`}.
          </li>
        )}
      </ul>
    </section>
  );
}
