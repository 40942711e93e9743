import { useEffect, useRef } from "react";
import type { TerrainPicture } from "./terrain-protocol.ts";
import { toPicture, type Size, type View } from "./view.ts";

interface Props {
  readonly picture: TerrainPicture;
  readonly map: { readonly view: View; readonly size: Size };
}

/** The shaded ground under the drawing. */
export function TerrainCanvas({ picture, map }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { image, extent } = picture;
  useEffect(() => {
    const element = canvas.current!;
    element.width = image.width;
    element.height = image.height;
    element.getContext("2d")?.drawImage(image, 0, 0);
  }, [image]);
  const [left, top] = toPicture(map.view, map.size, [extent[0], extent[3]]);
  const { scale } = map.view;
  return (
    <canvas
      ref={canvas}
      className="terrain"
      aria-hidden="true"
      style={{
        transform: `translate(${left}px, ${top}px)`,
        width: (extent[2] - extent[0]) * scale,
        height: (extent[3] - extent[1]) * scale,
      }}
    />
  );
}
