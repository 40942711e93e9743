import { useCallback, useRef, useState } from "react";

export interface MeasuredSize {
  readonly width: number;
  readonly height: number;
}

/** Size of an element's content box, kept in step with it. Give `measure` to the element as its ref. */
export function useSize(): MeasuredSize & { readonly measure: (element: HTMLElement | null) => void } {
  const [size, setSize] = useState<MeasuredSize>({ width: 0, height: 0 });
  const observer = useRef<ResizeObserver | null>(null);
  const measure = useCallback((element: HTMLElement | null) => {
    observer.current?.disconnect();
    if (!element) return;
    const read = (): void => {
      const next = { width: element.clientWidth, height: element.clientHeight };
      setSize((last) => (last.width === next.width && last.height === next.height ? last : next));
    };
    observer.current = new ResizeObserver(read);
    observer.current.observe(element);
    read();
  }, []);
  return { ...size, measure };
}
