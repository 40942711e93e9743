import { recordValue, type Source, type Trace } from "../formula/index.ts";
import type { Peak } from "../module-frame/index.ts";
import { qty, type Qty } from "../units/index.ts";

export const FRAME: Source = {
  id: "module-frame",
  title: "Stiffness method: beams in bending, shear and torsion on bearings that only push",
  at: "docs/methods/module-frame.md",
  status: "computed",
};

const mm = (m: number): string => `${(m * 1000).toFixed(0)} mm`;

/** Where the loads of a peak stand, in words. */
export const whereOf = ({ front_m, way, load, at_m }: Peak): string => {
  if (load.loads.length === 0) return `all over the deck; read ${mm(at_m)} from the start`;
  const others = load.loads.length > 1 ? `, the others ${way > 0 ? "beyond" : "behind"} it` : "";
  return `first load ${mm(front_m)} from the start${others}; read ${mm(at_m)} from the start`;
};

/** Puts a value of the whole frame into the working, and hands it on. */
export function recordPeak<U extends "N*m" | "N" | "m">(
  trace: Trace,
  symbol: string,
  title: string,
  value: number,
  unit: U,
  peak: Peak,
): Qty<U> {
  recordValue(trace, {
    id: "module.envelope",
    title,
    symbol,
    value,
    unit,
    source: FRAME,
    how: whereOf(peak),
    note: `${peak.load.name}; ${peak.placed.model.state.name}`,
  });
  return qty(value, unit);
}
