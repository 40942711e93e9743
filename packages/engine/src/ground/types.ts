import type { Source } from "../formula/index.ts";

/** Values of one printed terrain for Bekker's law, in the units of the print: kPa and metres. */
export interface TerrainSinkage {
  readonly id: string;
  readonly name: string;
  readonly n: number;
  /** kN/m^(n+1) and kN/m^(n+2), as printed: the pressure at one metre, in kN/m and kPa. */
  readonly kc_kn: number;
  readonly kphi_kn: number;
  readonly cohesion_kpa: number;
  readonly friction_deg: number;
  readonly source: string;
  readonly status: Source["status"];
}

/** Values of one muskeg with a living mat. */
export interface MuskegSinkage {
  readonly id: string;
  readonly name: string;
  readonly kp_kn_m3: number;
  readonly mm_kn_m3: number;
  readonly source: string;
  readonly status: Source["status"];
}

/** Typical compressibility of a soft soil: a stand-in until an oedometer test is at hand. */
export interface CompressibleSoil {
  readonly id: string;
  readonly name: string;
  /** Compression index and void ratio. */
  readonly cc: number;
  readonly e0: number;
  /** Ratio of secondary to primary compression index. */
  readonly ca_over_cc: number;
  readonly unit_weight_kn_m3: number;
  readonly source: string;
  readonly status: Source["status"];
  readonly note: string;
}

/** Tables of this topic, handed in. */
export interface GroundTables {
  readonly terrains: readonly TerrainSinkage[];
  readonly muskegs: readonly MuskegSinkage[];
  readonly compressible: readonly CompressibleSoil[];
}

/** What the methods of this topic need of their caller. */
export interface GroundContext {
  readonly tables: { readonly ground: GroundTables; readonly sources: Readonly<Record<string, Source>> };
}
