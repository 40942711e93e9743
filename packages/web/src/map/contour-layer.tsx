import { memo } from "react";
import { groundTransform, type Size, type View } from "./view.ts";
import type { ContourPath, TerrainPicture } from "./terrain-protocol.ts";

const Lines = memo(function Lines({ contours }: { readonly contours: readonly ContourPath[] }) {
  return contours.map((c) => (
    <path key={c.z_m} className={c.strong ? "contour contour-strong" : "contour"} d={c.path} />
  ));
});

interface Props {
  readonly picture: TerrainPicture;
  readonly map: { readonly view: View; readonly size: Size };
}

/** Lines of equal ground height. */
export function ContourLayer({ picture, map }: Props) {
  return (
    <g transform={groundTransform(map.view, map.size, picture.origin)} pointerEvents="none">
      <Lines contours={picture.contours} />
    </g>
  );
}
