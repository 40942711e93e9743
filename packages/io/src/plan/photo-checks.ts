import { rasterExtent, type Raster } from "@causey/engine/site";
import type { PhotoExtent } from "../photo/index.ts";
import type { Findings } from "../problem/index.ts";
import { extentText } from "./terrain-checks.ts";

/** A picture far from the ground is not seen, which its owner would not expect. */
export function checkPhotoOnSite(found: Findings, extent: PhotoExtent, terrain: Raster): void {
  const [west, south, east, north] = rasterExtent(terrain);
  const isOver = extent[0] < east && extent[2] > west && extent[1] < north && extent[3] > south;
  if (isOver) return;
  found.warn({
    code: "photo-off-site",
    place: "extent",
    value: `east ${extent[0].toFixed(1)} to ${extent[2].toFixed(1)}, north ${extent[1].toFixed(1)} to ${extent[3].toFixed(1)}`,
    message: `The picture lies wholly outside the ground that is known (${extentText(terrain)}).`,
    mend: "Check its world file and its system: are east and north exchanged, or is it in another system?",
  });
}
