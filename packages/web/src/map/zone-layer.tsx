import type { Zone } from "@causey/engine/site";
import { memo } from "react";
import { polygonsPath } from "./ground-path.ts";
import { drawingOrder } from "./zone-style.ts";
import type { XY } from "./view.ts";

const patterned = new Set(["habitat", "closed", "seasonal-closure", "buffer", "soft-ground"]);

interface Props {
  readonly zones: readonly Zone[];
  readonly origin: XY;
  readonly chosen: string | null;
  readonly prefix: string;
}

/** Areas with a rule, each with its hatching. Coordinates are metres; the parent group places them. */
export const ZoneLayer = memo(function ZoneLayer({ zones, origin, chosen, prefix }: Props) {
  return (
    <g>
      {drawingOrder(zones).map((zone) => {
        const path = polygonsPath(zone.polygons, origin);
        return (
          <g key={zone.id} data-zone={zone.id} className={`zone zone-${zone.use}`}>
            <path className="zone-ground" d={path} fillRule="evenodd" />
            {patterned.has(zone.use) && (
              <path d={path} fillRule="evenodd" fill={`url(#${prefix}-${zone.use})`} pointerEvents="none" />
            )}
            <path
              className={`zone-edge${zone.hidden ? " zone-hidden" : ""}${zone.id === chosen ? " zone-chosen" : ""}`}
              d={path}
            />
          </g>
        );
      })}
    </g>
  );
});
