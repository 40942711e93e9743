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
    // The observer speaks before the first paint; asking the element itself would lay the page out once more.
    observer.current = new ResizeObserver(([entry]) => {
      if (!entry) return;
      const { width, height } = entry.contentRect;
      setSize((last) => (last.width === width && last.height === height ? last : { width, height }));
    });
    observer.current.observe(element);
  }, []);
  return { ...size, measure };
}
