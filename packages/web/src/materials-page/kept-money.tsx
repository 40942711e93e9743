import type { Plan } from "@causey/engine/plan";
import { moneyLines } from "./money-lines.ts";

interface Props {
  readonly plan: Plan;
  readonly from: string;
  readonly to: string;
}

/** The money of the plan that keeps its numbers when the list comes in another currency, for somebody to look at. */
export function KeptMoney({ plan, from, to }: Props) {
  const { money, layout } = plan;
  const rates = moneyLines.filter((line) => line.unit === "money");
  const { shade_per_m2, contact_per_m2, crossing } = layout.weights;
  const harms = [shade_per_m2, contact_per_m2, crossing].filter((value) => value !== 0).length;
  return (
    <div className="problem problem-warning" data-kept-money>
      <p className="problem-message">
        These keep their numbers, though they were given in {from} and count as {to}:
      </p>
      <ul className="notes">
        {rates.map(({ key, label }) => (
          <li key={key}>
            {label}: {money[key] ?? 0}
          </li>
        ))}
        {harms > 0 && <li>the weights of harm on the Layout page</li>}
      </ul>
      <p className="problem-mend">
        Nothing is converted. Look at each under "Rates and shares" and give it anew.
      </p>
    </div>
  );
}
