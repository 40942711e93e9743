import { planWaste } from "@causey/engine/fabrication";
import type { Results } from "@causey/engine/plan";
import { show, type Reading } from "../show/show.ts";

interface Props {
  readonly cutting: Results["cutting"];
  readonly kerf_mm: number;
  readonly reading: Reading;
}

/** Each way a stick is sawn, drawn to scale: pieces from the left, the rest hatched. */
export function CuttingPlan({ cutting, reading }: Props) {
  const longest = Math.max(0, ...cutting.flatMap((c) => c.plan.patterns.map((p) => p.stock_mm)));
  return (
    <ul className="cuttings">
      {cutting.map(({ size, plan }) => (
        <li key={size}>
          <h3>
            {size}{" "}
            <span className="quiet">
              {plan.stock_used
                .map((s) => `${s.count} of ${show(s.length_mm / 1000, "m", reading)}`)
                .join(", ")}
              {wasteWords(planWaste(plan))}
              {plan.proven ? "; no cheaper way exists" : "; a cheaper way may exist"}
            </span>
          </h3>
          <ul>
            {plan.patterns.map((pattern) => (
              <li key={JSON.stringify(pattern)} className="pattern">
                <span className="pattern-times">{pattern.times} x</span>
                <Stick pattern={pattern} longest={longest} reading={reading} />
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}

const wasteWords = (waste: number | null): string =>
  waste === null ? "" : `; ${(waste * 100).toFixed(1)} % is left over or sawdust`;

type Pattern = Results["cutting"][number]["plan"]["patterns"][number];

function Stick({
  pattern,
  longest,
  reading,
}: {
  readonly pattern: Pattern;
  readonly longest: number;
  readonly reading: Reading;
}) {
  const pieces = pattern.cuts.flatMap((cut) => Array.from({ length: cut.count }, () => cut.length_mm));
  const words = pattern.cuts
    .map((cut) => `${cut.count} of ${show(cut.length_mm / 1000, "m", reading)}`)
    .join(", ");
  const scale = 1000 / longest;
  const starts = pieces.map((_, i) => pieces.slice(0, i).reduce((sum, l) => sum + l, 0));
  return (
    <span className="stick">
      <svg viewBox="0 0 1000 18" preserveAspectRatio="none" aria-hidden="true">
        <rect className="stick-rest" width={pattern.stock_mm * scale} height="18" />
        {pieces.map((length, i) => (
          <rect
            key={starts[i]!}
            className="stick-piece"
            x={starts[i]! * scale}
            width={length * scale}
            height="18"
          />
        ))}
      </svg>
      <span className="stick-words">
        from {show(pattern.stock_mm / 1000, "m", reading)}: {words}
        {pattern.offcut_mm > 0 && (
          <span className="quiet">, {show(pattern.offcut_mm / 1000, "m", reading)} left</span>
        )}
      </span>
    </span>
  );
}
