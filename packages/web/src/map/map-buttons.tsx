import { Button } from "@mantine/core";
import type { MapView } from "./use-map-view.ts";
import { viewKey } from "./use-map-view.ts";
import type { Extent } from "./view.ts";

interface Props {
  readonly map: MapView;
  readonly walkway: Extent;
  readonly site: Extent | null;
  /** The photo under the map; null where there is none. */
  readonly photo: { readonly isShown: boolean; readonly onShow: (isShown: boolean) => void } | null;
  readonly isDrawing: boolean;
  readonly onDraw: () => void;
  readonly onNumbers: () => void;
  /** Left out where the line is not drawn. */
  readonly line?: LineButtons | undefined;
}

/** A line drawn by hand takes the place of the searched one until it is taken away. */
export interface LineButtons {
  readonly isDrawn: boolean;
  readonly onDraw: () => void;
  readonly onSearch: () => void;
}

/** What can be done with the map, in its upper left corner. */
export function MapButtons({ map, walkway, site, photo, isDrawing, onDraw, onNumbers, line }: Props) {
  return (
    <div className="map-buttons">
      <fieldset className="map-zoom">
        <legend className="unseen">View</legend>
        <Button variant="default" aria-label="Nearer" onClick={() => viewKey(map, "+")}>
          +
        </Button>
        <Button variant="default" aria-label="Farther" onClick={() => viewKey(map, "-")}>
          −
        </Button>
        <Button variant="default" onClick={() => map.show(walkway)}>
          Walkway
        </Button>
        {site && (
          <Button variant="default" onClick={() => map.show(site)}>
            Site
          </Button>
        )}
        {photo && (
          <Button variant="default" aria-pressed={photo.isShown} onClick={() => photo.onShow(!photo.isShown)}>
            Photo
          </Button>
        )}
      </fieldset>
      {!isDrawing && (
        <fieldset className="map-zoom">
          <legend className="unseen">Close an area</legend>
          <Button variant="default" onClick={onDraw}>
            Close an area
          </Button>
          <Button variant="default" onClick={onNumbers}>
            by numbers
          </Button>
        </fieldset>
      )}
      {!isDrawing && line && (
        <fieldset className={`map-zoom${line.isDrawn ? " map-line-two" : ""}`}>
          <legend className="unseen">The line</legend>
          <Button variant="default" onClick={line.onDraw}>
            Draw the line
          </Button>
          {line.isDrawn && (
            <Button variant="default" onClick={line.onSearch}>
              Search the line
            </Button>
          )}
        </fieldset>
      )}
    </div>
  );
}
