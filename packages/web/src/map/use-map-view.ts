import { useCallback, useMemo, useRef, useState } from "react";
import { useSize } from "../show/use-size.ts";
import { fit, pan, zoomAt, type Extent, type Margins, type Size, type View, type XY } from "./view.ts";

/** Room for the buttons above, the scale bar below and the names at the sides [px]. */
const marginsOf = ({ width }: Size): Margins =>
  width < 500 ? { top: 68, right: 40, bottom: 56, left: 40 } : { top: 70, right: 76, bottom: 54, left: 64 };

/** Ref of the map's frame. */
type FrameRef = (element: HTMLDivElement | null) => (() => void) | undefined;

const unmeasured: Size = { width: 800, height: 500 };

/** What the parts of a map need of its view. */
export interface MapView {
  readonly focus: () => void;
  /** From a pointer's place on the screen to the picture. */
  readonly placeOf: (clientX: number, clientY: number) => XY;
  readonly size: Size;
  readonly view: View;
  readonly setView: (change: (view: View, size: Size) => View) => void;
  readonly show: (extent: Extent) => void;
}

/** View of one map: fits `home` when the frame is first measured, then keeps its upper edge when the frame changes. */
export function useMapView(home: Extent): MapView & { readonly attach: FrameRef } {
  const { measure, width, height } = useSize();
  const size = useMemo(() => ({ width, height }), [width, height]);
  const frame = useRef<HTMLDivElement | null>(null);
  const [view, set] = useState<View | null>(null);
  if (width > 0 && height > 0 && view === null) set(fit(home, size, marginsOf(size)));
  // The upper edge stays: when a bar appears below the map, the ground under the hand does not move.
  const [seen, setSeen] = useState(height);
  if (seen !== height) {
    setSeen(height);
    if (view && seen > 0 && height > 0) set({ ...view, y: view.y + (seen - height) / 2 / view.scale });
  }
  const setView = useCallback(
    (change: (view: View, size: Size) => View) => set((v) => (v ? change(v, size) : v)),
    [size],
  );
  const show = useCallback((extent: Extent) => setView((_, s) => fit(extent, s, marginsOf(s))), [setView]);
  const placeOf = useCallback((clientX: number, clientY: number): XY => {
    const box = frame.current?.getBoundingClientRect();
    return [clientX - (box?.left ?? 0), clientY - (box?.top ?? 0)];
  }, []);
  const attach = useCallback(
    (element: HTMLDivElement | null) => {
      frame.current = element;
      measure(element);
      return element ? onWheel(element, placeOf, setView) : undefined;
    },
    [measure, placeOf, setView],
  );
  const focus = useCallback(() => frame.current?.focus(), []);
  const shown = view ?? fit(home, unmeasured, marginsOf(unmeasured));
  return { attach, focus, placeOf, size, view: shown, setView, show };
}

/** The wheel zooms at the pointer. Not a passive listener, for the page must not scroll as well. */
function onWheel(element: HTMLElement, placeOf: MapView["placeOf"], setView: MapView["setView"]): () => void {
  const turn = (event: WheelEvent): void => {
    event.preventDefault();
    const at = placeOf(event.clientX, event.clientY);
    setView((v, s) => zoomAt(v, s, at, Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0015))));
  };
  element.addEventListener("wheel", turn, { passive: false });
  return () => element.removeEventListener("wheel", turn);
}

interface Gestures {
  readonly onTap: (at: XY, event: React.PointerEvent) => void;
  readonly onHover: (at: XY | null) => void;
}

const SLOP = 5;

/** One finger or the mouse pans, two fingers zoom, a press without moving is a tap. */
export function useGestures(
  map: MapView,
  { onTap, onHover }: Gestures,
): React.HTMLAttributes<HTMLDivElement> {
  const down = useRef(new Map<number, XY>());
  const moved = useRef(false);
  const { setView } = map;
  const place = (event: React.PointerEvent): XY => map.placeOf(event.clientX, event.clientY);
  const lift = (event: React.PointerEvent): void => {
    down.current.delete(event.pointerId);
    if (down.current.size === 0) moved.current = false;
  };

  return {
    onPointerDown: (event) => {
      if (event.button !== 0) return;
      down.current.set(event.pointerId, place(event));
    },
    onPointerMove: (event) => {
      const now = place(event);
      const before = down.current.get(event.pointerId);
      if (!before) return onHover(now);
      const [dx, dy] = [now[0] - before[0], now[1] - before[1]];
      if (!moved.current && down.current.size === 1 && Math.hypot(dx, dy) < SLOP) return;
      if (!moved.current) event.currentTarget.setPointerCapture(event.pointerId);
      moved.current = true;
      const other = [...down.current].find(([id]) => id !== event.pointerId)?.[1];
      down.current.set(event.pointerId, now);
      setView((v, s) => (other ? pinch(v, s, before, now, other) : pan(v, dx, dy)));
    },
    onPointerUp: (event) => {
      if (down.current.size === 1 && down.current.has(event.pointerId) && !moved.current)
        onTap(place(event), event);
      lift(event);
    },
    onPointerCancel: lift,
    onPointerLeave: () => onHover(null),
  };
}

/** Two fingers: the distance between them zooms about their middle, and the middle pans. */
function pinch(view: View, size: Size, before: XY, now: XY, other: XY): View {
  const wide = (a: XY): number => Math.max(8, Math.hypot(a[0] - other[0], a[1] - other[1]));
  const middle: XY = [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2];
  const moved = pan(view, (now[0] - before[0]) / 2, (now[1] - before[1]) / 2);
  return zoomAt(moved, size, middle, wide(now) / wide(before));
}

const STEP = 60;

/** Keys of the map frame itself: arrows pan, + and - zoom. True when the key was one of them. */
export function viewKey(map: MapView, key: string): boolean {
  const middle: XY = [map.size.width / 2, map.size.height / 2];
  const moves: Readonly<Record<string, (v: View, s: Size) => View>> = {
    ArrowLeft: (v) => pan(v, STEP, 0),
    ArrowRight: (v) => pan(v, -STEP, 0),
    ArrowUp: (v) => pan(v, 0, STEP),
    ArrowDown: (v) => pan(v, 0, -STEP),
    "+": (v, s) => zoomAt(v, s, middle, 1.3),
    "=": (v, s) => zoomAt(v, s, middle, 1.3),
    "-": (v, s) => zoomAt(v, s, middle, 1 / 1.3),
  };
  const move = moves[key];
  if (!move) return false;
  map.setView(move);
  return true;
}
