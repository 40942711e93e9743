import { useState } from "react";
import { addPoint, draftFault, type Shape } from "./area-draft.ts";
import type { MapView } from "./use-map-view.ts";
import { SNAP_PX, snapTo } from "./snap.ts";
import { pan, toGround, toPicture, type XY } from "./view.ts";

/** Drawing an area's outline or a line: by presses, or with a cross moved by the arrow keys. */
export interface AreaTool {
  readonly isOn: boolean;
  readonly shape: Shape;
  readonly points: readonly XY[];
  /** Ground under the cross or the pointer; null while the pointer is away. */
  readonly cursor: XY | null;
  readonly fault: string | null;
  readonly start: (shape: Shape) => void;
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

/** `marks` are the plots and starts on the ground: a corner of a line set beside one is set on it. */
export function useAreaTool(
  map: MapView,
  marks: readonly XY[],
  onDrawn: (points: readonly XY[], shape: Shape) => void,
): AreaTool {
  const [isOn, setOn] = useState(false);
  const [shape, setShape] = useState<Shape>("area");
  const [points, setPoints] = useState<readonly XY[]>([]);
  const [cursor, setCursor] = useState<XY | null>(null);
  const ground = (at: XY): XY => toGround(map.view, map.size, at);
  const cornerAt = (place: XY): XY =>
    shape === "line" ? snapTo(marks, place, SNAP_PX / map.view.scale) : place;
  const middle = (): XY => ground([map.size.width / 2, map.size.height / 2]);

  const leave = (): void => {
    setOn(false);
    setPoints([]);
    setCursor(null);
  };
  const takeBack = (): void => setPoints((all) => all.slice(0, -1));
  const finish = (): void => {
    if (draftFault(points, shape)) return;
    onDrawn(points, shape);
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
    else if (event.key === " ") setPoints((all) => addPoint(all, cornerAt(cursor ?? middle())));
    else if (event.key === "Enter") finish();
    else if (event.key === "Backspace") takeBack();
    else if (event.key === "Escape") leave();
    else return false;
    return true;
  };

  return {
    isOn,
    shape,
    points,
    cursor,
    fault: draftFault(points, shape),
    leave,
    takeBack,
    finish,
    key,
    start: (next) => {
      setOn(true);
      setShape(next);
      setPoints([]);
      setCursor(middle());
    },
    press: (at) => {
      const corner = cornerAt(ground(at));
      setPoints((all) => addPoint(all, corner));
      setCursor(corner);
    },
    hover: (at) => at && setCursor(cornerAt(ground(at))),
  };
}
