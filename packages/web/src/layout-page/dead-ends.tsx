import type { RouteFacts } from "@causey/engine/layout";
import { showQuantity, type UnitSystem } from "@causey/engine/units";

interface Props {
  readonly route: RouteFacts;
  readonly units: UnitSystem;
}

/** Ends of the walkway that lead nowhere on, each with its sign at the last place to turn. */
export function DeadEnds({ route, units }: Props) {
  if (route.dead_ends.length === 0) return null;
  return (
    <section aria-labelledby="dead-ends-head">
      <h2 id="dead-ends-head">Dead ends</h2>
      <ul className="notes" aria-label="Signs at the last place to turn">
        {route.dead_ends.map((e) => (
          <li key={e.joint} data-dead-end={e.joint}>
            <b>
              {e.joint}
              {e.plots.length > 0 && ` (${e.plots.join(", ")})`}
            </b>
            :{" "}
            {e.back_m > 0
              ? `sign at joint ${e.sign_at}: the last place to turn is ${e.last_turn === null ? "the start" : `platform ${e.last_turn}`}, ${showQuantity(e.back_m, "m", units)} before the end.`
              : `ends on platform ${e.last_turn}, where one can turn.`}
          </li>
        ))}
      </ul>
      <p className="quiet">Accessible trails ask for the sign (ABA 1017.4); carts need it as much.</p>
    </section>
  );
}
