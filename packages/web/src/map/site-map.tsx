import type { Plan, Results } from "@causey/engine/plan";
import { lazy, Suspense, useState } from "react";
import type { Change } from "../api/types.ts";
import type { Freshness } from "../desk/derive-session.ts";
import { useDesk } from "../desk/desk.ts";
import { useStore } from "../desk/store.ts";
import { showRound } from "../show/show.ts";
import { drawnZone, nextAreaName, type Shape } from "./area-draft.ts";
import type { AreaRequest } from "./close-area-dialog.tsx";
import { NorthArrow, ScaleBar } from "./furniture.tsx";
import { ImageCanvas } from "./image-canvas.tsx";
import { MapButtons } from "./map-buttons.tsx";
import { MapDrawing } from "./map-drawing.tsx";
import { MapHints } from "./map-hints.tsx";
import { partAt } from "./part-at.ts";
import type { TerrainPicture } from "./terrain-protocol.ts";
import { useAreaTool } from "./use-area-tool.ts";
import { useGestures, useMapView, viewKey } from "./use-map-view.ts";
import { usePlotMoves } from "./use-plot-moves.ts";
import { atLeast, extentOf, toGround, type Extent, type Size, type XY } from "./view.ts";
import "./map.css";
import "./map-layers.css";
import "./map-furniture.css";
import "./map-tools.css";
import "./map-phone.css";
import "./map-print.css";

/** A part is meant when the pointer is this near to it [px]. */
const TOUCH_PX = 9;

const CloseAreaDialog = lazy(() => import("./close-area-dialog.tsx"));

/** What a print needs to draw the map as it stands on the screen, fitted to the paper. */
const printSize = ({ width, height }: Size): React.CSSProperties =>
  ({ "--map-width": width || 800, "--map-height": height || 500 }) as React.CSSProperties;

interface Props {
  readonly plan: Plan;
  readonly results: Results | null;
  readonly waiting: readonly Change[];
  readonly freshness: Freshness;
  /** Takes over a line drawn by hand; null takes it away. Left out where none is drawn. */
  readonly onLine?: (points: readonly XY[] | null) => void;
}

/** The site from above: ground, zones, walkway, plots; plots move and areas close by hand. */
export function SiteMap({ plan, results, waiting, freshness, onLine }: Props) {
  const desk = useDesk();
  const { picture, message } = useStore(desk.terrain, (t) => t);
  const photo = useStore(desk.photo, (p) => p);
  const [showsPhoto, setShowsPhoto] = useState(true);
  const walkway = walkwayExtent(plan, results);
  const { attach, ...map } = useMapView(walkway);
  const [request, setRequest] = useState<AreaRequest | null>(null);
  const moves = usePlotMoves(waiting, (plot, x, y) => desk.plan.edit({ type: "move-plot", plot, x, y }));
  const marks = [...plan.starts.map((s): XY => [s.x, s.y]), ...plan.plots.map(moves.place)];
  const area = useAreaTool(map, marks, (points, shape) => {
    if (shape === "line") onLine?.(points);
    else setRequest({ by: "outline", ring: points });
  });
  const partUnder = (at: XY): string | null =>
    results && partAt(results.layout, toGround(map.view, map.size, at), TOUCH_PX / map.view.scale);
  const gestures = useGestures(map, {
    onHover: (at) => {
      area.hover(at);
      const part = at && !area.isOn ? partUnder(at) : null;
      desk.selection.point(part === null ? [] : [part]);
    },
    onTap: (at, event) => (area.isOn ? area.press(at) : choose(at, event.target as Element)),
  });

  const choose = (at: XY, target: Element): void => {
    const part = partUnder(at);
    const zone = target.closest<SVGElement>("[data-zone]")?.dataset["zone"] ?? null;
    desk.selection.update({ part, zone: part === null ? zone : null });
  };
  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.target !== event.currentTarget) return;
    if ((area.isOn && area.key(event)) || viewKey(map, event.key)) event.preventDefault();
  };
  const startDrawing = (shape: Shape): void => {
    area.start(shape);
    map.focus();
  };

  return (
    <div className="map-sheet" style={printSize(map.size)}>
      <section className={`site-map${area.isOn ? " site-map-drawing" : ""}`} aria-label="Map of the site">
        {/* A drawing that is moved by hand and by keys: no element of HTML is one. */}
        {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions */}
        <div
          ref={attach}
          className="map-surface"
          // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
          tabIndex={0}
          role="application"
          aria-label="Map. Arrow keys move it, plus and minus zoom. Tab goes on to the plots."
          onKeyDown={onKeyDown}
          onDoubleClick={() => area.isOn && area.finish()}
          {...gestures}
        >
          {picture && (
            <ImageCanvas className="terrain" image={picture.image} extent={picture.extent} map={map} />
          )}
          {plan.photo && photo.picture && showsPhoto && (
            <ImageCanvas
              className="map-photo"
              image={photo.picture.image}
              extent={photo.picture.extent}
              map={map}
              opacity={plan.photo.opacity ?? 1}
            />
          )}
          <MapDrawing
            plan={plan}
            results={results}
            picture={picture}
            origin={picture?.origin ?? originOf(walkway)}
            map={map}
            moves={moves}
            area={area}
            freshness={freshness}
          />
        </div>
        <p id="plot-keys" className="unseen">
          Arrow keys move the plot by half a metre, with shift by five. Enter keeps it, Escape leaves it.
        </p>
        <MapButtons
          map={map}
          walkway={walkway}
          site={picture?.extent ?? photo.picture?.extent ?? null}
          isDrawing={area.isOn}
          photo={plan.photo && photo.picture && { isShown: showsPhoto, onShow: setShowsPhoto }}
          onDraw={() => startDrawing("area")}
          line={
            onLine && {
              isDrawn: plan.layout.lines.length > 0,
              onDraw: () => startDrawing("line"),
              onSearch: () => onLine(null),
            }
          }
          onNumbers={() => setRequest({ by: "numbers", middle: [map.view.x, map.view.y] })}
        />
        <NorthArrow />
        <ScaleBar scale={map.view.scale} units={plan.units} />
        <MapNote
          plan={plan}
          results={results}
          picture={picture}
          message={message}
          photo={plan.photo && photo.message}
        />
        <MapHints plan={plan} moves={moves} area={area} />
        <Suspense>
          {request && (
            <CloseAreaDialog
              request={request}
              units={plan.units}
              nameFor={(use) => nextAreaName(plan.zones, use)}
              onLeave={() => setRequest(null)}
              onClose={(answer, ring) => {
                desk.plan.edit({ type: "add-zone", zone: drawnZone(plan.zones, answer, ring) });
                setRequest(null);
              }}
            />
          )}
        </Suspense>
      </section>
    </div>
  );
}

/** The walkway is never shown closer than this: a plan that begins has one start and nothing else [m]. */
const LEAST_SHOWN_M = 60;

const originOf = ([west, south, east, north]: Extent): XY => [(west + east) / 2, (south + north) / 2];

function walkwayExtent(plan: Plan, results: Results | null): Extent {
  const points = [...plan.starts, ...plan.plots, ...(results?.layout.joints ?? [])];
  const extent = extentOf(points.map((p): XY => [p.x, p.y]));
  return extent === null ? [0, 0, 100, 100] : atLeast(extent, LEAST_SHOWN_M);
}

interface NoteProps {
  readonly plan: Plan;
  readonly results: Results | null;
  readonly picture: TerrainPicture | null;
  readonly message: string | null;
  /** Why the photo is not drawn. */
  readonly photo: string | null;
}

/** What the map stands on: horizontal system, datum, lines of equal height; or why the ground is not drawn. */
function MapNote({ plan, results, picture, message, photo }: NoteProps) {
  const crs = results?.crs ?? ("epsg" in plan.crs ? `EPSG:${plan.crs.epsg}` : plan.crs.local);
  const notes = message
    ? [`The ground could not be drawn: ${message}`]
    : [
        crs,
        `heights on ${results?.datum ?? plan.vertical_datum}`,
        ...(picture ? [`contours ${showRound(picture.step_m, plan.units)}, smoothed`] : []),
      ];
  if (photo) notes.push(`The photo could not be drawn: ${photo}`);
  return (
    <p className="map-note">
      {notes.map((note) => (
        <span key={note}>{note}</span>
      ))}
    </p>
  );
}
