import type { Box } from "./place-labels.ts";
import type { Size } from "./view.ts";

/** Where buttons, north arrow, scale bar and note lie over the map: no name is put under them. */
export function furnitureBoxes({ width, height }: Size): Box[] {
  const isSmall = width < 500;
  const buttons = isSmall ? 230 : 420;
  const note = isSmall ? { wide: 160, high: 64 } : { wide: 400, high: 32 };
  return [
    { left: 0, top: 0, right: buttons, bottom: 54 },
    { left: width - 60, top: 0, right: width, bottom: 86 },
    { left: 0, top: height - 46, right: 230, bottom: height },
    { left: width - note.wide, top: height - note.high, right: width, bottom: height },
  ];
}
