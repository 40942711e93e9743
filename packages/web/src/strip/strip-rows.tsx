import type { StripCell, StripModel } from "@causey/engine/plan";
import type { Plot } from "@causey/engine/site";
import type { UnitSystem } from "@causey/engine/units";
import { useDesk } from "../desk/desk.ts";
import { ticks, type StripScale } from "./strip-scale.ts";

interface RowProps {
  readonly model: StripModel;
  readonly scale: StripScale;
}

/** Where each branch begins, and the plot it leads to. */
export function BranchNames({ model, scale, plots }: RowProps & { readonly plots: readonly Plot[] }) {
  const nameOf = (plot: string): string => plots.find((p) => p.id === plot)?.name ?? plot;
  return (
    <div className="strip-branches">
      {model.branches.map((b) => (
        <div key={b.id} style={{ left: scale.x(b.from_m), width: scale.x(b.to_m) - scale.x(b.from_m) }}>
          <span>
            <b>{b.id}</b> {b.plot && `to ${nameOf(b.plot)}`}
          </span>
        </div>
      ))}
    </div>
  );
}

/** Distance along the walkway. */
export function Axis({ model, scale, units }: RowProps & { readonly units: UnitSystem }) {
  const perMetre = scale.x(1) - scale.x(0);
  return (
    <div className="strip-axis" aria-hidden="true">
      {ticks(model.length_m, perMetre, units).map((t) => (
        <span key={t.at_m} style={{ left: scale.x(t.at_m) }}>
          {t.text}
        </span>
      ))}
    </div>
  );
}

/** A line through the pointed part, from the names down to its cell. */
export function Marker({ cell, scale }: { readonly cell: StripCell; readonly scale: StripScale }) {
  return (
    <div
      className="strip-marker"
      style={{ left: scale.x((cell.from_m + cell.to_m) / 2) }}
      aria-hidden="true"
    />
  );
}

/** Lets the pointer pick a part anywhere over the section, not only on its cell. */
export function Pointer({ model, scale }: RowProps) {
  const { selection } = useDesk();
  const cellAt = (event: React.PointerEvent | React.MouseEvent): StripCell | undefined => {
    const left = event.currentTarget.getBoundingClientRect().left;
    const x = event.clientX - left;
    return model.cells.find((c) => scale.x(c.from_m) <= x && x < scale.x(c.to_m));
  };
  return (
    // The cells below do the same for the keyboard.
    // oxlint-disable-next-line jsx-a11y/click-events-have-key-events, jsx-a11y/no-static-element-interactions
    <div
      className="strip-pointer"
      style={{ height: scale.height }}
      onPointerMove={(event) => {
        const cell = cellAt(event);
        selection.point(cell ? [cell.part] : []);
      }}
      onPointerLeave={() => selection.point([])}
      onClick={(event) => selection.choosePart(cellAt(event)?.part ?? null)}
    />
  );
}
