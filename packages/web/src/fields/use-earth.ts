import type { PointMap } from "@causey/io/crs";
import { useEffect, useState } from "react";

export interface Earth {
  readonly toGrid: PointMap;
  /** How far off a place may be; empty when it is as good as the phone. */
  readonly doubt: string;
}

/** A code that stands for no system that can be computed covers no place. */
const NOWHERE: Earth = { toGrid: () => null, doubt: "" };

/** The way from degrees to the grid, once it has been read; null for no system. */
export function useEarth(epsg: number | null): Earth | null {
  const [read, setRead] = useState<{ readonly epsg: number; readonly earth: Earth } | null>(null);
  useEffect(() => {
    if (epsg === null) return undefined;
    let isWanted = true;
    const keep = (earth: Earth): void => {
      if (isWanted) setRead({ epsg, earth });
    };
    readEarth(epsg).then(keep, () => keep(NOWHERE));
    return () => {
      isWanted = false;
    };
  }, [epsg]);
  return read !== null && read.epsg === epsg ? read.earth : null;
}

async function readEarth(epsg: number): Promise<Earth> {
  const { crsFromEpsg, lonLatAccuracy, toGrid } = await import("@causey/io/crs");
  const system = await crsFromEpsg(epsg);
  const { grade, note } = lonLatAccuracy(system);
  return { toGrid: toGrid(system), doubt: grade === "good" ? "" : note };
}
