import type { Trace } from "../formula/index.ts";
import type { StrengthReading } from "../site/index.ts";
import { pascals } from "../units/index.ts";
import { vaneSensitivity } from "./formulas.ts";

export interface ShearAtDepth {
  readonly depth_m: number;
  readonly su_kpa: number;
  readonly remoulded_kpa: number | null;
  /** Peak over remoulded; null when the remoulded strength was not read or is 0. */
  readonly sensitivity: number | null;
  readonly vane_mm: string | null;
  readonly source: string;
}

export interface ShearStation {
  readonly x: number;
  readonly y: number;
  /** From the top down. */
  readonly readings: readonly ShearAtDepth[];
  /** Weakest reading: what a support must be able to stand on. */
  readonly least_su_kpa: number;
  /** Largest of its readings; null when none has one. */
  readonly sensitivity: number | null;
}

/** Readings nearer to each other than this are of one station [m]. */
const ONE_STATION_M = 0.01;

/** Strength and sensitivity by station, in the order in which stations first appear. */
export function shearSummary(readings: readonly StrengthReading[], trace?: Trace): readonly ShearStation[] {
  const stations = new Map<string, StrengthReading[]>();
  for (const r of readings) {
    const key = `${Math.round(r.x / ONE_STATION_M)} ${Math.round(r.y / ONE_STATION_M)}`;
    const group = stations.get(key);
    if (group) group.push(r);
    else stations.set(key, [r]);
  }
  return [...stations.values()].map((group) => summarise(group, trace));
}

function summarise(group: readonly StrengthReading[], trace?: Trace): ShearStation {
  const readings = group.map((r) => atDepth(r, trace)).sort((a, b) => a.depth_m - b.depth_m);
  const known = readings.map((r) => r.sensitivity).filter((s) => s !== null);
  return {
    x: group[0]!.x,
    y: group[0]!.y,
    readings,
    least_su_kpa: Math.min(...readings.map((r) => r.su_kpa)),
    sensitivity: known.length === 0 ? null : Math.max(...known),
  };
}

function atDepth(r: StrengthReading, trace?: Trace): ShearAtDepth {
  const remoulded_kpa = r.remoulded_kpa ?? null;
  const sensitivity =
    remoulded_kpa === null || remoulded_kpa <= 0
      ? null
      : vaneSensitivity({ p: pascals(r.su_kpa * 1000), r: pascals(remoulded_kpa * 1000) }, trace);
  return {
    depth_m: r.depth_m,
    su_kpa: r.su_kpa,
    remoulded_kpa,
    sensitivity,
    vane_mm: r.vane_mm ?? null,
    source: r.source,
  };
}
