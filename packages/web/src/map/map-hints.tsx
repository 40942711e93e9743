import type { Plan } from "@causey/engine/plan";
import { useDesk } from "../desk/desk.ts";
import { useStore } from "../desk/store.ts";
import { AreaHint, PlotHint, ZoneHint } from "./map-hint.tsx";
import type { AreaTool } from "./use-area-tool.ts";
import type { PlotMoves } from "./use-plot-moves.ts";

interface Props {
  readonly plan: Plan;
  readonly moves: PlotMoves;
  readonly area: AreaTool;
}

/** The one hint that matters now: the area being drawn, the plot on its way, or the chosen area. */
export function MapHints({ plan, moves, area }: Props) {
  const desk = useDesk();
  const chosen = useStore(desk.selection, (s) => s.zone);
  const zone = plan.zones.find((z) => z.id === chosen);
  const plot = plan.plots.find((p) => p.id === moves.draft?.plot);
  const remove = (id: string): void => {
    desk.plan.edit({ type: "remove-zone", zone: id });
    desk.selection.chooseZone(null);
  };
  return (
    <div className="map-hints" aria-live={area.isOn ? "off" : "polite"}>
      {area.isOn ? (
        <AreaHint tool={area} units={plan.units} />
      ) : plot ? (
        <PlotHint plot={plot} moves={moves} units={plan.units} />
      ) : (
        zone && (
          <ZoneHint
            zone={zone}
            onDismiss={() => desk.selection.chooseZone(null)}
            onRemove={() => remove(zone.id)}
          />
        )
      )}
    </div>
  );
}
