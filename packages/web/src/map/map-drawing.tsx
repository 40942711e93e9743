import type { Plan, Results } from "@causey/engine/plan";
import type { Freshness } from "../desk/derive-session.ts";
import { useDesk } from "../desk/desk.ts";
import { useStore } from "../desk/store.ts";
import { AreaSketch } from "./area-sketch.tsx";
import { ContourLayer } from "./contour-layer.tsx";
import { LabelLayer } from "./label-layer.tsx";
import { PartLayer, PartMark } from "./part-layer.tsx";
import { PlotHandle } from "./plot-handle.tsx";
import { plotStates, stateWords } from "./plot-states.ts";
import { StartMark } from "./start-mark.tsx";
import type { TerrainPicture } from "./terrain-protocol.ts";
import type { AreaTool } from "./use-area-tool.ts";
import type { MapView } from "./use-map-view.ts";
import type { PlotMoves } from "./use-plot-moves.ts";
import { groundTransform, toGround, toPicture, type XY } from "./view.ts";
import { ZoneLayer } from "./zone-layer.tsx";
import { ZonePatterns } from "./zone-patterns.tsx";

interface Props {
  readonly plan: Plan;
  readonly results: Results | null;
  readonly picture: TerrainPicture | null;
  readonly origin: XY;
  readonly map: MapView;
  readonly moves: PlotMoves;
  readonly area: AreaTool;
  readonly freshness: Freshness;
}

/** Everything that is drawn as lines: contours, zones, walkway, names, plots, and what the hand draws. */
export function MapDrawing(props: Props) {
  const { plan, results, picture, origin, map, moves, area } = props;
  const { selection } = useDesk();
  const chosenZone = useStore(selection, (s) => s.zone);
  return (
    <svg className="map-drawing" width={map.size.width} height={map.size.height}>
      <ZonePatterns prefix="map" scale={map.view.scale} />
      {picture && <ContourLayer picture={picture} map={map} />}
      <g transform={groundTransform(map.view, map.size, origin)}>
        <ZoneLayer zones={plan.zones} origin={origin} chosen={chosenZone} prefix="map" />
      </g>
      <DrawnLines plan={plan} map={map} />
      {results && <Walkway {...props} results={results} />}
      <LabelLayer
        plan={plan}
        layout={results?.layout ?? null}
        moves={moves}
        view={map.view}
        size={map.size}
      />
      {plan.starts.map((s) => (
        <StartMark key={s.id} start={s} at={toPicture(map.view, map.size, [s.x, s.y])} />
      ))}
      <g className={area.isOn ? "plots-still" : undefined}>
        <Plots {...props} />
      </g>
      {area.isOn && <AreaSketch tool={area} map={map} />}
    </svg>
  );
}

/** Lines drawn by hand, which the parts follow. */
const DrawnLines = ({ plan, map }: Pick<Props, "plan" | "map">) =>
  plan.layout.lines.map((line) => (
    <path
      key={line.id}
      className="drawn-line"
      d={`M${line.points.map((p) => toPicture(map.view, map.size, p).join(" ")).join("L")}`}
    />
  ));

function Walkway({ plan, results, origin, map, freshness }: Props & { readonly results: Results }) {
  const { selection } = useDesk();
  const { part, pointed } = useStore(selection, (s) => ({ part: s.part, pointed: s.pointed }));
  const { layout, strip } = results;
  return (
    <g className={`walkway ${freshness}`} transform={groundTransform(map.view, map.size, origin)}>
      <PartLayer layout={layout} kit={plan.kit} cells={strip.cells} origin={origin} />
      <PartMark layout={layout} parts={pointed} origin={origin} className="part-pointed" />
      {part !== null && <PartMark layout={layout} parts={[part]} origin={origin} className="part-chosen" />}
    </g>
  );
}

function Plots({ plan, results, map, moves }: Props) {
  const stateOf = plotStates(results);
  const groundAt = (clientX: number, clientY: number): XY => {
    return toGround(map.view, map.size, map.placeOf(clientX, clientY));
  };
  return plan.plots.map((plot) => {
    const place = moves.place(plot);
    const state = stateOf(plot.id);
    return (
      <PlotHandle
        key={plot.id}
        plot={plot}
        at={toPicture(map.view, map.size, place)}
        scale={map.view.scale}
        state={state}
        moves={moves}
        groundAt={groundAt}
        label={`${plot.name}, ${stateWords[state]}, east ${place[0].toFixed(1)}, north ${place[1].toFixed(1)}`}
      />
    );
  });
}
