import { Button } from "@mantine/core";
import type { Plot, Zone } from "@causey/engine/site";
import { showQuantity, type UnitSystem } from "@causey/engine/units";
import type { AreaTool } from "./use-area-tool.ts";
import type { PlotMoves } from "./use-plot-moves.ts";
import { isRemovable, zoneUseWords, zoneLabel } from "./zone-style.ts";

/** How far a plot's draft lies from the plan, in words. */
export function offsetWords(plot: Plot, at: readonly [number, number], units: UnitSystem): string {
  const part = (value: number, plus: string, minus: string): string | null =>
    Math.abs(value) < 0.005
      ? null
      : `${showQuantity(Math.abs(value), "m", units)} ${value > 0 ? plus : minus}`;
  const parts = [part(at[0] - plot.x, "east", "west"), part(at[1] - plot.y, "north", "south")];
  return parts.filter((p) => p !== null).join(", ") || "where it was";
}

interface PlotProps {
  readonly plot: Plot;
  readonly moves: PlotMoves;
  readonly units: UnitSystem;
}

/** A plot on its way: how far, and how to end it. */
export function PlotHint({ plot, moves, units }: PlotProps) {
  const draft = moves.draft!;
  return (
    <div className="map-hint">
      <p className="map-hint-words">
        <b>{plot.name}</b> {offsetWords(plot, draft.at, units)}
      </p>
      {draft.by === "keys" && (
        <div className="map-hint-buttons">
          <Button onClick={moves.commit}>Keep it here (Enter)</Button>
          <Button variant="default" onClick={moves.leave}>
            Leave it (Escape)
          </Button>
        </div>
      )}
    </div>
  );
}

/** What the area tool waits for, and its ends. */
export function AreaHint({ tool }: { readonly tool: AreaTool }) {
  return (
    <div className="map-hint">
      <div className="map-hint-words">
        <p>
          {tool.shape === "line" && "Draw the way from the start on. "}
          Press to set the corners; a double press or Enter ends. By keys: arrows move the cross, space sets a
          corner, Escape leaves.
        </p>
        <p className="quiet">{tool.fault ?? `${tool.points.length} corners set.`}</p>
      </div>
      <div className="map-hint-buttons">
        <Button onClick={tool.finish} disabled={tool.fault !== null}>
          {tool.shape === "area" ? "End the outline" : "End the line"}
        </Button>
        <Button variant="default" onClick={tool.takeBack} disabled={tool.points.length === 0}>
          Take back
        </Button>
        <Button variant="default" onClick={tool.leave}>
          Leave
        </Button>
      </div>
    </div>
  );
}

interface ZoneProps {
  readonly zone: Zone;
  readonly onRemove: () => void;
  readonly onDismiss: () => void;
}

/** The chosen area: what it is, where it comes from, and its removal where that is allowed. */
export function ZoneHint({ zone, onRemove, onDismiss }: ZoneProps) {
  return (
    <div className="map-hint">
      <p className="map-hint-words">
        <b>{zone.hidden ? zone.name : zoneLabel(zone)}</b> {zoneUseWords[zone.use]}{" "}
        <span className="quiet">({zone.source})</span>
        {zone.hidden && " Hidden: it steers the search and stands on no shared paper."}
      </p>
      <div className="map-hint-buttons">
        {isRemovable(zone) && <Button onClick={onRemove}>Take this area away</Button>}
        <Button variant="default" onClick={onDismiss}>
          Done
        </Button>
      </div>
    </div>
  );
}
