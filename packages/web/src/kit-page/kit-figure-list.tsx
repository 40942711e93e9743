import type { Figure, Plan } from "@causey/engine/plan";
import type { KitFigure, KitFigures, PartFigures } from "@causey/engine/kit-figures";
import { feetInches } from "@causey/engine/units";
import { lazy, Suspense, useState } from "react";
import { show, type Reading } from "../show/show.ts";
import { readingOf } from "../show/reading.ts";
import "../layout-page/figures.css";

const FigureDrawer = lazy(() => import("../working/figure-drawer.tsx"));

interface Group {
  readonly title: string;
  readonly note: string | null;
  readonly rows: readonly (readonly [label: string, figure: KitFigure])[];
}

/** Masses, open shares and costs of every part; each figure opens its working. */
export function KitFigureList({ figures, plan }: { readonly figures: KitFigures; readonly plan: Plan }) {
  const reading = readingOf(plan);
  const [open, setOpen] = useState<{ readonly title: string; readonly figure: KitFigure } | null>(null);
  return (
    <>
      {groupsOf(figures, plan.units === "us").map((group) => (
        <section key={group.title} aria-label={group.title} className="kit-group">
          <h2>{group.title}</h2>
          <dl className="figures">
            {group.rows.map(([label, figure]) => (
              <div key={label} className="figure">
                <dt>{label}</dt>
                <dd>
                  {figure.value === null ? (
                    <span className="quiet">missing {figure.missing.join(", ")}</span>
                  ) : (
                    <button
                      type="button"
                      className="plain-button figure-value"
                      aria-haspopup="dialog"
                      onClick={() => setOpen({ title: `${group.title}: ${label}`, figure })}
                    >
                      {shown(figure, reading)}
                      <span className="unseen">, show the working</span>
                    </button>
                  )}
                </dd>
              </div>
            ))}
          </dl>
          {group.note !== null && <p className="quiet">{group.note}</p>}
        </section>
      ))}
      <Suspense>
        {open && (
          <FigureDrawer
            figure={asFigure(open.title, open.figure)}
            reading={reading}
            onClose={() => setOpen(null)}
          />
        )}
      </Suspense>
    </>
  );
}

const shown = (figure: KitFigure, reading: Reading): string =>
  figure.unit === "1" ? `${(figure.value! * 100).toFixed(0)} %` : show(figure.value!, figure.unit, reading);

const asFigure = (title: string, figure: KitFigure): Figure => ({
  id: title,
  title,
  value: figure.value ?? 0,
  unit: figure.unit,
  note: "",
  working: figure.working,
  sources: [],
});

/** The part with its length as the reader's tape shows it. */
const nameOf = ({ kind, name, length_mm }: PartFigures, isUs: boolean): string =>
  kind === "module" || kind === "ramp"
    ? `${kind === "module" ? "Module" : "Ramp"}, ${isUs ? feetInches(length_mm / 1000) : `${Math.round(length_mm)} mm`}`
    : name.replace(/ [\d.]+ mm$/, "");

type Row = Group["rows"][number];

function partRows(part: PartFigures, carriers: number, isUs: boolean): Row[] {
  const rows: Row[] = [
    ["Mass, new and dry", part.mass_new],
    ["Mass, soaked", part.mass_soaked],
    [`Each of ${carriers} carriers, soaked`, part.carrier_soaked],
  ];
  if (part.open)
    rows.push(["Open share of the deck", part.open.deck], ["Open share of the whole", part.open.whole]);
  if (part.cost)
    rows.push(
      ["Materials", part.cost.material],
      isUs ? ["Materials of a foot", part.cost.per_ft] : ["Materials of a metre", part.cost.per_m],
    );
  return rows;
}

function groupsOf(figures: KitFigures, isUs: boolean): Group[] {
  const parts = [...figures.modules, figures.platform, ...figures.halves, ...figures.ramps];
  return [
    ...parts.map((part): Group => ({
      title: nameOf(part, isUs),
      note: null,
      rows: partRows(part, figures.carriers, isUs),
    })),
    ...figures.supports.map((s): Group => ({
      title: s.name,
      note: s.engineer,
      rows: [
        ["Ground touched", s.contact],
        ["Mass at its tallest", s.highest.mass_new],
        ["Materials at its tallest", s.highest.cost],
      ],
    })),
    { title: "Lifting", note: null, rows: [["What one carrier may lift", figures.carrier_limit]] },
  ];
}
