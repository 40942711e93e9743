import { Button } from "@mantine/core";
import type { Plan, Visit } from "@causey/engine/plan";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { useSection } from "../fields/use-section.ts";
import { VisitFields } from "./visit-fields.tsx";

/** Every visit with its people, cart and days; each change is saved by itself. */
export function Visits({ plan }: { readonly plan: Plan }) {
  const { value: visits, take } = useSection(plan, "visits");
  const replace = (i: number, visit: Visit): void => take(visits.with(i, visit));
  return (
    <FieldGroup
      title="Visits"
      note="Each kind of visit by itself: the heaviest one decides what the walkway must carry."
    >
      {visits.map((visit, i) => (
        <VisitFields
          key={visit.id}
          visit={visit}
          plan={plan}
          onTake={(next) => replace(i, next)}
          onRemove={() => take(visits.toSpliced(i, 1))}
        />
      ))}
      {plan.plots.length === 0 ? (
        <p className="quiet">Place a plot on the Site page first: a visit needs somewhere to go.</p>
      ) : (
        <Button variant="default" onClick={() => take([...visits, freshVisit(plan)])}>
          Add a visit
        </Button>
      )}
    </FieldGroup>
  );
}

/** A visit to start from: one person to every plot, once a week, no cart, no last day told. */
function freshVisit({ visits, plots, laying }: Plan): Visit {
  const ids = new Set(visits.map((v) => v.id));
  let n = visits.length + 1;
  while (ids.has(`visit-${n}`)) n++;
  return {
    id: `visit-${n}`,
    name: `Visit ${n}`,
    plots: plots.map((p) => p.id),
    people: 1,
    person_kg: 90,
    spacing_mm: 1500,
    cart: null,
    per_year: 52,
    from: laying.to,
    to: null,
  };
}
