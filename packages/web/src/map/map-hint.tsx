import { Button } from "@mantine/core";
import type { Plot, Zone } from "@causey/engine/site";
import { showQuantity, type UnitSystem } from "@causey/engine/units";
import { degrees, legsOf, offSquare, squareHeadings } from "./line-legs.ts";
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

interface AreaProps {
  readonly tool: AreaTool;
  readonly units: UnitSystem;
}

/** What the area tool waits for, and its ends; small, for the whole map is drawn on. */
export function AreaHint({ tool, units }: AreaProps) {
  return (
    <div className="map-hint map-hint-drawing">
      <div className="map-hint-words">
        {tool.shape === "line" && tool.points.length > 0 ? (
          <LegWords tool={tool} units={units} />
        ) : (
          <p>
            {tool.shape === "line"
              ? "Press along the way, from the start on; beside a plot means the plot."
              : "Press to set the corners."}
          </p>
        )}{" "}
        <p className="quiet">{tool.fault ?? `${tool.points.length} corners set.`}</p>
        <p className="unseen">
          A double press or Enter ends. By keys: arrows move the cross, space sets a corner, Backspace takes
          it back, Escape leaves.
        </p>
      </div>
      <div className="map-hint-buttons">
        <Button onClick={tool.finish} disabled={tool.fault !== null} title="Double press, or Enter">
          {tool.shape === "area" ? "End the outline" : "End the line"}
        </Button>
        <Button
          variant="default"
          onClick={tool.takeBack}
          disabled={tool.points.length === 0}
          title="Backspace"
        >
          Take back
        </Button>
        <Button variant="default" onClick={tool.leave} title="Escape">
          Leave
        </Button>
      </div>
    </div>
  );
}

/** The leg under the hand: heading and length, and what the platforms' square turns make of it. */
function LegWords({ tool, units }: AreaProps) {
  const set = legsOf(tool.points);
  const square = squareHeadings(set);
  const toCursor = tool.cursor ? legsOf([tool.points.at(-1)!, tool.cursor])[0] : undefined;
  const leg = toCursor && toCursor.length_m > 0.05 ? toCursor : set.at(-1);
  if (!leg) return <p>Corner 1 is set: press where the first leg ends.</p>;
  const off = square ? Math.round(offSquare(leg.heading_deg, square)) : 0;
  return (
    <p>
      <b>
        Heading {degrees(leg.heading_deg)}, {showQuantity(leg.length_m, "m", units)}
      </b>
      {square
        ? `, ${off === 0 ? "square" : `${off}° off square`}. Platforms turn square: ${square.map(degrees).join(", ")}.`
        : ". Platforms turn square to it."}
    </p>
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
