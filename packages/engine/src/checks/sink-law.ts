import type { Trace } from "../formula/index.ts";
import {
  bekker,
  bekkerGround,
  hydraulicDiameter,
  muskegSinkage,
  RIGID_PLASTIC_N,
  sinkageOf,
  USE_BEARING_CAPACITY,
  type BekkerGround,
  type GroundTables,
} from "../ground/index.ts";
import { metres, pascals, qty, type Qty } from "../units/index.ts";

/** How the chosen terrain sinks. */
export interface SinkLaw {
  readonly name: string;
  /** Sinkage [m] under a pressure [Pa]; null where the foot goes right in. */
  readonly sink: (foot: { along_m: number; across_m: number }, p: number, trace?: Trace) => Qty<"m"> | null;
  /** Null for ground with a living mat, whose law does not say how a foot tilts. */
  readonly bekker: BekkerGround | null;
}

export type FoundLaw =
  | { readonly kind: "law"; readonly law: SinkLaw }
  | { readonly kind: "missing"; readonly missing: string }
  | { readonly kind: "unfit"; readonly because: string };

export const SINK_SOURCE = bekker;

/** The law of a row of the tables, by id. Ground that gives way almost at once has none that means anything. */
export function sinkLaw(id: string | null, { terrains, muskegs }: GroundTables): FoundLaw {
  const ids = [...terrains, ...muskegs].map((t) => t.id).join(", ");
  if (id === null)
    return {
      kind: "missing",
      missing: `how the ground sinks: choose a row of the table of pressure and sinkage (${ids})`,
    };
  const terrain = terrains.find((t) => t.id === id);
  if (terrain && terrain.n < RIGID_PLASTIC_N) return { kind: "unfit", because: USE_BEARING_CAPACITY };
  if (terrain) {
    const ground = bekkerGround(terrain);
    const sink: SinkLaw["sink"] = (foot, p, trace) =>
      sinkageOf(ground, Math.min(foot.along_m, foot.across_m), pascals(p), trace);
    return { kind: "law", law: { name: terrain.name, sink, bekker: ground } };
  }
  const muskeg = muskegs.find((m) => m.id === id);
  if (!muskeg)
    return {
      kind: "missing",
      missing: `"${id}" is not in the table of pressure and sinkage: choose one of ${ids}`,
    };
  const [kp, mm] = [qty(muskeg.kp_kn_m3 * 1000, "N/m3"), qty(muskeg.mm_kn_m3 * 1000, "N/m3")];
  const sink: SinkLaw["sink"] = ({ along_m, across_m }, p, trace) => {
    const Dh = hydraulicDiameter({ a: metres(along_m), b: metres(across_m) }, trace);
    return muskegSinkage({ p: pascals(p), kp, mm, Dh }, trace);
  };
  return { kind: "law", law: { name: muskeg.name, sink, bekker: null } };
}
