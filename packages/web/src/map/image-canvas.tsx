import { useEffect, useRef } from "react";
import { toPicture, type Extent, type Size, type View } from "./view.ts";

interface Props {
  readonly className: string;
  readonly image: ImageBitmap;
  readonly extent: Extent;
  readonly map: { readonly view: View; readonly size: Size };
  readonly opacity?: number;
}

/** A picture of the ground under the drawing, at its place. */
export function ImageCanvas({ className, image, extent, map, opacity = 1 }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
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
      className={className}
      aria-hidden="true"
      style={{
        transform: `translate(${left}px, ${top}px)`,
        width: (extent[2] - extent[0]) * scale,
        height: (extent[3] - extent[1]) * scale,
        opacity,
      }}
    />
  );
}
