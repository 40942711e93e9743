import { useState } from "react";
import { addPoint, outlineFault } from "./area-draft.ts";
import type { MapView } from "./use-map-view.ts";
import { pan, toGround, toPicture, type XY } from "./view.ts";

/** Drawing the outline of an area: by presses, or with a cross moved by the arrow keys. */
export interface AreaTool {
  readonly isOn: boolean;
  readonly points: readonly XY[];
  /** Ground under the cross or the pointer; null while the pointer is away. */
  readonly cursor: XY | null;
  readonly fault: string | null;
  readonly start: () => void;
  readonly leave: () => void;
  readonly takeBack: () => void;
  readonly press: (at: XY) => void;
  readonly hover: (at: XY | null) => void;
  readonly finish: () => void;
  /** True when the key belonged to the tool. */
  readonly key: (event: React.KeyboardEvent) => boolean;
}

const STEP_PX = 10;
const STRIDE_PX = 50;
const directions: Readonly<Record<string, XY>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

export function useAreaTool(map: MapView, onClosed: (ring: readonly XY[]) => void): AreaTool {
  const [isOn, setOn] = useState(false);
  const [points, setPoints] = useState<readonly XY[]>([]);
  const [cursor, setCursor] = useState<XY | null>(null);
  const ground = (at: XY): XY => toGround(map.view, map.size, at);
  const middle = (): XY => ground([map.size.width / 2, map.size.height / 2]);

  const leave = (): void => {
    setOn(false);
    setPoints([]);
    setCursor(null);
  };
  const takeBack = (): void => setPoints((all) => all.slice(0, -1));
  const finish = (): void => {
    if (outlineFault(points)) return;
    onClosed(points);
    leave();
  };
  const moveCross = (dx: number, dy: number): void => {
    const [px, py] = toPicture(map.view, map.size, cursor ?? middle());
    const to: XY = [px + dx, py + dy];
    setCursor(ground(to));
    const isOutside = to[0] < 10 || to[1] < 10 || to[0] > map.size.width - 10 || to[1] > map.size.height - 10;
    if (isOutside) map.setView((view) => pan(view, -dx * 2, -dy * 2));
  };
  const key = (event: React.KeyboardEvent): boolean => {
    const direction = directions[event.key];
    const step = event.shiftKey ? STRIDE_PX : STEP_PX;
    if (direction) moveCross(direction[0] * step, direction[1] * step);
    else if (event.key === " ") setPoints((all) => addPoint(all, cursor ?? middle()));
    else if (event.key === "Enter") finish();
    else if (event.key === "Backspace") takeBack();
    else if (event.key === "Escape") leave();
    else return false;
    return true;
  };

  return {
    isOn,
    points,
    cursor,
    fault: outlineFault(points),
    leave,
    takeBack,
    finish,
    key,
    start: () => {
      setOn(true);
      setPoints([]);
      setCursor(middle());
    },
    press: (at) => setPoints((all) => addPoint(all, ground(at))),
    hover: (at) => at && setCursor(ground(at)),
  };
}
