import { fromArrayBuffer } from "geotiff";
import type { Heights } from "./stour-zones.ts";

/** Reads the north-up GeoTIFF of the Stour terrain with a public library, so that no reader of ours is needed. */
export async function stourHeights(bytes: Uint8Array): Promise<Heights> {
  const image = await (await fromArrayBuffer(bytes.slice().buffer)).getImage();
  const [cols, rows] = [image.getWidth(), image.getHeight()];
  const [west, south] = image.getBoundingBox() as [number, number, number, number];
  const [band] = (await image.readRasters()) as unknown as [ArrayLike<number>];
  const nodata = image.getGDALNoData();
  const values = Float32Array.from({ length: cols * rows }, (_, k) => {
    const z = band[(rows - 1 - Math.floor(k / cols)) * cols + (k % cols)]!;
    return z === nodata ? NaN : z;
  });
  return { cols, rows, west, south, cell: image.getResolution()[0]!, values };
}
