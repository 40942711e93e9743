/** What a file of a picture says of itself in its first bytes. */
export interface PictureSize {
  readonly kind: "jpeg" | "png";
  readonly cols: number;
  readonly rows: number;
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** Width and height of a JPEG or PNG without unpacking it; null for anything else, and for one that is cut off. */
export function pictureSize(bytes: Uint8Array): PictureSize | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (PNG.every((b, i) => bytes[i] === b))
    return bytes.length < 33 ? null : { kind: "png", cols: view.getUint32(16), rows: view.getUint32(20) };
  return bytes[0] === 0xff && bytes[1] === 0xd8 ? jpegSize(view) : null;
}

/** Walks the segments up to the start of a frame (markers C0 to CF but for C4, C8, CC: ITU-T T.81, table B.1). */
function jpegSize(view: DataView): PictureSize | null {
  let at = 2;
  while (at + 9 <= view.byteLength) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return { kind: "jpeg", rows: view.getUint16(at + 5), cols: view.getUint16(at + 7) };
    const length = view.getUint16(at + 2);
    if (length < 2) return null;
    at += 2 + length;
  }
  return null;
}
