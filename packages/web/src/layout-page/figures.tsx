import type { Figure } from "@causey/engine/plan";
import { lazy, Suspense, useState } from "react";
import type { Freshness } from "../desk/derive-session.ts";
import { showFigure, type Reading } from "../show/show.ts";
import "./figures.css";

const FigureDrawer = lazy(() => import("../working/figure-drawer.tsx"));

interface Props {
  readonly figures: readonly Figure[];
  readonly reading: Reading;
  readonly freshness: Freshness;
}

/** The page's figures with dotted leaders; each opens its working. */
export function Figures({ figures, reading, freshness }: Props) {
  const [open, setOpen] = useState<string | null>(null);
  const opened = figures.find((f) => f.id === open);
  return (
    <>
      <dl className={`figures ${freshness}`} aria-busy={freshness === "pending"}>
        {figures.map((figure) => (
          <div key={figure.id} className="figure" data-figure={figure.id}>
            <dt>{figure.title}</dt>
            <dd>
              <button
                type="button"
                className="plain-button figure-value"
                aria-haspopup="dialog"
                onClick={() => setOpen(figure.id)}
              >
                {showFigure(figure, reading)}
                <span className="unseen">, show the working</span>
              </button>
              {figure.incomplete !== undefined && (
                <span className="figure-gap">
                  <span>{figure.incomplete}</span>
                </span>
              )}
            </dd>
          </div>
        ))}
      </dl>
      <Suspense>
        {opened && <FigureDrawer figure={opened} reading={reading} onClose={() => setOpen(null)} />}
      </Suspense>
    </>
  );
}
