import { NEAR_LIMIT } from "@causey/engine/plan";
import { showShare } from "../show/show.ts";

/** The bar ends here, a quarter beyond the limit. */
const BEYOND = 1.25;

/** Utilisation as a bar with a line at the limit; hatched where the limit is passed. */
export function ShareBar({ utilisation }: { readonly utilisation: number }) {
  const state = utilisation > 1 ? "over" : utilisation > NEAR_LIMIT ? "near" : "within";
  return (
    <span className="share">
      <span className="share-track" aria-hidden="true">
        <span
          className={`share-fill share-${state}`}
          style={{ width: `${(100 * Math.min(utilisation, BEYOND)) / BEYOND}%` }}
        />
        <span className="share-limit" style={{ left: `${100 / BEYOND}%` }} />
      </span>
      <span className="share-figure">{showShare(utilisation)}</span>
    </span>
  );
}
