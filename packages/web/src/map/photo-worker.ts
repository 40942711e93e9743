import type { Photo, Plan } from "@causey/engine/plan";
import { photoPixels, readPhoto, type PhotoExtent } from "@causey/io/photo";

/** The finest that a photo is drawn, each way [px]: 16 MB in memory, whatever the file holds. */
const FINEST_PHOTO = 2000;

export interface PhotoRequest {
  readonly id: number;
  readonly photo: Photo;
  readonly crs: Plan["crs"];
  readonly bytes: Uint8Array;
}

export interface PhotoPicture {
  readonly image: ImageBitmap;
  readonly extent: PhotoExtent;
}

export type PhotoAnswer =
  | { readonly id: number; readonly ok: true; readonly picture: PhotoPicture }
  | { readonly id: number; readonly ok: false; readonly message: string };

/** Unpacks a photo in few enough pixels: GeoTIFF by our own reader, JPEG and PNG by the browser's. */
async function draw({ photo, crs, bytes }: PhotoRequest): Promise<PhotoPicture> {
  const { extent, cols, rows } = readPhoto(photo, bytes, crs);
  const pixels = await photoPixels(photo.file, bytes, FINEST_PHOTO);
  const image = pixels
    ? await createImageBitmap(new ImageData(pixels.rgba, pixels.cols, pixels.rows))
    : await unpacked(bytes, cols, rows);
  return { image, extent };
}

function unpacked(bytes: Uint8Array, cols: number, rows: number): Promise<ImageBitmap> {
  const k = Math.max(1, Math.max(cols, rows) / FINEST_PHOTO);
  const blob = new Blob([bytes as Uint8Array<ArrayBuffer>]);
  return createImageBitmap(blob, {
    resizeWidth: Math.max(1, Math.round(cols / k)),
    resizeHeight: Math.max(1, Math.round(rows / k)),
    resizeQuality: "high",
    imageOrientation: "none",
  });
}

self.addEventListener("message", (event: MessageEvent<PhotoRequest>) => {
  const { id } = event.data;
  draw(event.data).then(
    (picture) => {
      const answer: PhotoAnswer = { id, ok: true, picture };
      self.postMessage(answer, { transfer: [picture.image] });
    },
    (error: unknown) => {
      const message = error instanceof Error ? error.message : String(error);
      self.postMessage({ id, ok: false, message } satisfies PhotoAnswer);
    },
  );
});
