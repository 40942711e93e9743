import { inputProblem, type Trace } from "../../formula/index.ts";
import type { Fastener } from "../../materials/index.ts";
import type { Qty } from "../../units/index.ts";
import type { Found, LoadDuration } from "../contract.ts";
import { freshHole } from "../fastener-holes.ts";
import { usLateral } from "./fasteners/lateral.ts";

/** Screws driven through a side piece into the end of a main piece. */
export interface ScrewJoint {
  readonly screw: Fastener;
  readonly count: number;
  readonly side_m: number;
  readonly gravity: number;
  readonly end_grain: boolean;
  readonly wet: boolean;
  readonly duration: LoadDuration;
}

export interface ScrewCapacity {
  /** All screws of the joint, across their length [N]; 0 when they reach in too little. */
  readonly lateral: Qty<"N">;
  readonly mode: string;
}

/**
 * Lateral value of wood screws through a side piece into a main piece of the same wood (NDS 2018, 12.3), on the root
 * diameter, with the reduction term on the shank diameter. 0 N when they reach in less than 6 shank diameters.
 */
export function screwLateral(joint: ScrewJoint, trace?: Trace): Found<ScrewCapacity> {
  const { screw, gravity, side_m: thickness_m } = joint;
  if (screw.kind !== "wood-screw" || screw.root_mm === undefined || screw.fyb_psi === undefined)
    return { ok: false, problems: [notAScrew(screw.id)] };
  const found = usLateral(
    {
      fastener: screw,
      count: joint.count,
      per_row: 1,
      side: { material: "wood", thickness_m, gravity },
      main: { material: "wood", thickness_m: screw.length_mm / 1000, gravity },
      shear: "single",
      grain: joint.end_grain ? "end" : "side",
      toe_nail: false,
      moisture: joint.wet ? "wet" : "dry",
      duration: joint.duration,
      short_reach: "equations",
      rope: false,
      hole: freshHole,
    },
    trace,
  );
  return found.ok ? { ok: true, value: { lateral: found.value.value, mode: found.value.governs } } : found;
}

const notAScrew = (id: string) =>
  inputProblem(
    "screw",
    id,
    "is not a wood screw with a known root diameter and bending yield",
    "Choose a wood screw of the fastener table, or ask the maker for a tested value.",
  );
