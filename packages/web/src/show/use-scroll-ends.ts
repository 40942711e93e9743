import { useEffect, useState, type RefObject } from "react";

interface ScrollEnds {
  /** Something lies out of sight on this side. */
  readonly goesOnLeft: boolean;
  readonly goesOnRight: boolean;
}

const SLACK = 4;

/** Whether a line that scrolls sideways goes on beyond its ends; follows scrolling and changes of size. */
export function useScrollEnds(line: RefObject<HTMLElement | null>): ScrollEnds {
  const [ends, setEnds] = useState<ScrollEnds>({ goesOnLeft: false, goesOnRight: false });
  useEffect(() => {
    const element = line.current;
    if (!element) return;
    const look = (): void => {
      const { scrollLeft, scrollWidth, clientWidth } = element;
      setEnds({
        goesOnLeft: scrollLeft > SLACK,
        goesOnRight: scrollLeft + clientWidth < scrollWidth - SLACK,
      });
    };
    look();
    const watch = new ResizeObserver(look);
    watch.observe(element);
    element.addEventListener("scroll", look, { passive: true });
    return () => {
      watch.disconnect();
      element.removeEventListener("scroll", look);
    };
  }, [line]);
  return ends;
}
