import type { Zone } from "@causey/engine/site";
import { useDesk } from "../desk/desk.ts";
import { useStore } from "../desk/store.ts";
import { drawingOrder, zoneUseWords, zoneLabel } from "../map/zone-style.ts";
import { ZonePatterns } from "../map/zone-patterns.tsx";
import "./zone-list.css";

/** The zones as a legend; each can be chosen on the map from here. */
export function ZoneList({ zones }: { readonly zones: readonly Zone[] }) {
  const { selection } = useDesk();
  const chosen = useStore(selection, (s) => s.zone);
  if (zones.length === 0) return null;
  return (
    <section aria-label="Areas on the map">
      <h2>Areas</h2>
      <svg width="0" height="0" className="zone-swatches" aria-hidden="true">
        <ZonePatterns prefix="legend" scale={1} />
      </svg>
      <ul className="zone-list">
        {drawingOrder(zones)
          .toReversed()
          .map((zone) => (
            <li key={zone.id}>
              <button
                type="button"
                className="plain-button zone-line"
                aria-pressed={zone.id === chosen}
                onClick={() => selection.chooseZone(zone.id === chosen ? null : zone.id)}
              >
                <svg
                  width="26"
                  height="16"
                  aria-hidden="true"
                  className={`zone-swatch zone zone-${zone.use}`}
                >
                  <rect className="zone-ground" width="26" height="16" />
                  <rect width="26" height="16" fill={`url(#legend-${zone.use})`} />
                  <rect
                    className={`zone-edge${zone.hidden ? " zone-hidden" : ""}`}
                    x="0.5"
                    y="0.5"
                    width="25"
                    height="15"
                  />
                </svg>
                <span>{zone.hidden ? zone.name : zoneLabel(zone)}</span>
                <span className="quiet">
                  {zone.hidden ? "hidden: kept out of papers" : zoneUseWords[zone.use]}
                </span>
              </button>
            </li>
          ))}
      </ul>
    </section>
  );
}
