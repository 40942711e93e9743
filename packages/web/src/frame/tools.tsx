import { useComputedColorScheme, useMantineColorScheme } from "@mantine/core";
import type { UnitSystem } from "@causey/engine/units";
import { useEffect } from "react";
import type { PlanSnapshot } from "../api/types.ts";
import { useDesk } from "../desk/desk.ts";

interface Props {
  readonly snapshot: PlanSnapshot | null;
  readonly onPlans: () => void;
}

/** Units, undo, the list of plans, the hand-over, and day or night sheet. */
export function Tools({ snapshot, onPlans }: Props) {
  return (
    <div className="tools">
      <div className="tools-row">
        {snapshot && <UnitSwitch units={snapshot.plan.units} />}
        <SheetSwitch />
      </div>
      <div className="tools-row">
        {snapshot && <UndoRedo snapshot={snapshot} />}
        <button type="button" className="plain-button tool" onClick={onPlans} aria-haspopup="dialog">
          Plans
        </button>
        {snapshot && <HandOver id={snapshot.id} />}
      </div>
    </div>
  );
}

export function UndoRedo({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const { plan } = useDesk();
  return (
    <>
      <button
        type="button"
        className="plain-button tool"
        disabled={snapshot.undo === null}
        title={snapshot.undo === null ? "Nothing to undo" : `Undo: ${snapshot.undo}`}
        onClick={plan.undo}
      >
        Undo
      </button>
      <button
        type="button"
        className="plain-button tool"
        disabled={snapshot.redo === null}
        title={snapshot.redo === null ? "Nothing to redo" : `Redo: ${snapshot.redo}`}
        onClick={plan.redo}
      >
        Redo
      </button>
    </>
  );
}

export function HandOver({ id }: { readonly id: string }) {
  const { plans } = useDesk();
  return (
    <a className="tool" href={plans.archiveAddress(id)} download>
      Hand over (.zip)
    </a>
  );
}

const unitWords: readonly { readonly units: UnitSystem; readonly words: string }[] = [
  { units: "us", words: "feet and inches" },
  { units: "metric", words: "metres" },
];

export function UnitSwitch({ units }: { readonly units: UnitSystem }) {
  const { plan } = useDesk();
  return (
    <fieldset className="tool-switch">
      <legend className="unseen">Units</legend>
      {unitWords.map((u) => (
        <button
          key={u.units}
          type="button"
          className="plain-button tool"
          aria-pressed={u.units === units}
          onClick={() => u.units !== units && plan.edit({ type: "set-units", units: u.units })}
        >
          {u.words}
        </button>
      ))}
    </fieldset>
  );
}

export function SheetSwitch() {
  const { setColorScheme } = useMantineColorScheme({ keepTransitions: true });
  const scheme = useComputedColorScheme("light");
  return (
    <button
      type="button"
      className="plain-button tool"
      onClick={() => setColorScheme(scheme === "dark" ? "light" : "dark")}
    >
      {scheme === "dark" ? "Day sheet" : "Night sheet"}
    </button>
  );
}

/** Ctrl or Cmd with Z takes back, with Shift Z or Y does again; not while a text is being written. */
export function useUndoKeys(): void {
  const { plan } = useDesk();
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || (event.target as Element).closest("input, textarea")) return;
      const { snapshot } = plan.get();
      const key = event.key.toLowerCase();
      if (key === "z" && !event.shiftKey && snapshot?.undo) plan.undo();
      else if (((key === "z" && event.shiftKey) || key === "y") && snapshot?.redo) plan.redo();
      else return;
      event.preventDefault();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [plan]);
}
