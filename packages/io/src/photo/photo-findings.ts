import { Findings, type FaultParts } from "../problem/findings.ts";

/** The reader of TIFF files speaks of terrain; of a picture the same faults are told as those of a picture. */
export class PhotoFindings extends Findings {
  override error(parts: FaultParts): void {
    super.error(asPhoto(parts));
  }

  override warn(parts: FaultParts): void {
    super.warn(asPhoto(parts));
  }
}

const asPhoto = (parts: FaultParts): FaultParts => ({
  ...parts,
  code: parts.code.replace(/^terrain-/, "photo-"),
  message: words(parts.message),
  mend: words(parts.mend),
});

const words = (text: string): string =>
  text
    .replaceAll("single-band ", "")
    .replaceAll('"terrain": {', '"photo": {')
    .replaceAll("terrain", "picture")
    .replaceAll(/\b([Tt])he grid\b/g, "$1he picture")
    .replaceAll("cells", "pixels");
