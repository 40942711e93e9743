import { groundInputs } from "@causey/io/ground";
import { rasterExtent, type Raster } from "@causey/engine/site";
import { coarser, contourPaths, contourStep, heightRange, shade, smoother } from "./terrain-picture.ts";
import type { TerrainAnswer, TerrainPicture, TerrainRequest } from "./terrain-protocol.ts";
import { readRaster } from "./terrain-source.ts";

const FINEST_PICTURE = 2000;
const FINEST_LINES = 420;
const SMOOTHINGS = 2;

const held = new Map<string, Raster>();
/** Files as they were sent: the same file may be read in another way later. */
const sent = new Map<string, Uint8Array>();

async function rasterOf({ plan, sha256, bytes }: TerrainRequest): Promise<Raster> {
  const key = `${sha256} ${JSON.stringify(groundInputs(plan))}`;
  const known = held.get(key);
  if (known) return known;
  if (bytes) sent.set(sha256, bytes);
  const raster = await readRaster(plan, sent.get(sha256) ?? null);
  held.set(key, raster);
  return raster;
}

async function draw(request: TerrainRequest): Promise<TerrainPicture> {
  const raster = await rasterOf(request);
  const fine = coarser(raster, FINEST_PICTURE);
  const lines = smoother(coarser(raster, FINEST_LINES), SMOOTHINGS);
  const extent = rasterExtent(fine);
  const origin = [(extent[0] + extent[2]) / 2, (extent[1] + extent[3]) / 2] as const;
  const step_m = contourStep(heightRange(lines), request.plan.units);
  return {
    image: await createImageBitmap(new ImageData(shade(fine, request.scheme), fine.cols, fine.rows)),
    extent,
    origin,
    contours: contourPaths(lines, step_m, origin),
    step_m,
    contour_cell_m: lines.dx,
    cell_m: raster.dx,
  };
}

self.addEventListener("message", (event: MessageEvent<TerrainRequest>) => {
  const { id } = event.data;
  draw(event.data).then(
    (picture) => {
      const answer: TerrainAnswer = { id, ok: true, picture };
      self.postMessage(answer, { transfer: [picture.image] });
    },
    (error: unknown) => {
      const answer: TerrainAnswer = {
        id,
        ok: false,
        message: error instanceof Error ? error.message : String(error),
      };
      self.postMessage(answer);
    },
  );
});
