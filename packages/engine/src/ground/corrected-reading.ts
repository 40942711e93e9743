import { inputProblem, recordValue, type Problem, type Trace } from "../formula/index.ts";
import { DomainError, PA_PER_PSF, PA_PER_PSI, metres, pascals, qty, type Qty } from "../units/index.ts";
import {
  bjerrumFactor,
  coneFactors,
  coneStrength,
  overburden,
  peatVaneFactor,
  peatVaneHigh,
  peatVaneLow,
  vaneStrength,
} from "./reading-corrections.ts";
import { coneFactor } from "./sources.ts";

export const instruments = ["vane", "cone", "laboratory"] as const;
export type Instrument = (typeof instruments)[number];
export const groundMaterials = ["peat", "organic-clay", "clay", "mud"] as const;
export type GroundMaterial = (typeof groundMaterials)[number];

/** Pascals in one unit of a reading. */
const PA_PER = { Pa: 1, kPa: 1000, MPa: 1e6, psf: PA_PER_PSF, psi: PA_PER_PSI } as const;
export type ReadingUnit = keyof typeof PA_PER;
export const readingUnits = Object.keys(PA_PER) as readonly ReadingUnit[];

/** A reading as it came from the instrument. Whatever was not written down is null. */
export interface RawReading {
  readonly value: number | null;
  readonly unit: string | null;
  readonly instrument: string | null;
  /** Below ground [m]. */
  readonly depth_m: number | null;
  readonly material: string | null;
  /** Per cent; clay and mud. */
  readonly plasticity_index?: number | null;
  /** Cone only: the cone factor, where the site has its own, and the weight of the ground over the cone. */
  readonly cone_factor?: number | null;
  readonly unit_weight_n_m3?: number | null;
}

/** A reading with what it was and what it became. */
export interface CorrectedReading {
  readonly was: { readonly value: number; readonly unit: ReadingUnit; readonly instrument: Instrument };
  readonly material: GroundMaterial;
  readonly depth_m: number;
  /** Strength after the correction, and the range that published factors leave [Pa]. */
  readonly su_pa: number;
  readonly low_pa: number;
  readonly high_pa: number;
  /** What the reading was multiplied with; for a cone 1 / Nkt on the net resistance. */
  readonly factor: number;
  readonly note: string;
}

export type ReadingOutcome =
  | { readonly ok: true; readonly value: CorrectedReading }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const isOneOf = <T extends string>(list: readonly T[], v: string | null): v is T => list.includes(v as T);
const over0 = (v: number | null | undefined): boolean => typeof v === "number" && v > 0 && v < Infinity;

/** Everything that keeps a reading from being used, all at once. `place` is its path in the user's input. */
export function readingProblems(raw: RawReading, place: string): readonly Problem[] {
  const problems: Problem[] = [];
  const say = (key: string, value: unknown, message: string, mend: string): void => {
    problems.push(inputProblem(`${place}.${key}`, value, message, mend));
  };
  if (!over0(raw.value))
    say("value", raw.value, "must be a number over 0", "Give what the instrument showed.");
  if (!isOneOf(readingUnits, raw.unit))
    say(
      "unit",
      raw.unit,
      "a reading without a known unit says nothing",
      `Give one of ${readingUnits.join(", ")}.`,
    );
  if (!isOneOf(instruments, raw.instrument))
    say(
      "instrument",
      raw.instrument,
      "the instrument must be known",
      `Give one of ${instruments.join(", ")}.`,
    );
  if (!(typeof raw.depth_m === "number" && raw.depth_m >= 0 && raw.depth_m < 100))
    say(
      "depth_m",
      raw.depth_m,
      "the depth below ground must be known",
      "Give metres below ground, 0 to 100.",
    );
  if (!isOneOf(groundMaterials, raw.material))
    say(
      "material",
      raw.material,
      "the kind of ground must be known",
      `Give one of ${groundMaterials.join(", ")}.`,
    );
  const pi = raw.plasticity_index ?? null;
  if (pi !== null && !(pi >= 1 && pi <= 200))
    say("plasticity_index", pi, "must lie between 1 and 200 per cent", "Give per cent, or leave it out.");
  if (raw.instrument === "cone") problems.push(...coneProblems(raw, place));
  return problems;
}

function coneProblems(raw: RawReading, place: string): Problem[] {
  const problems: Problem[] = [];
  const at = (key: string): string => `${place}.${key}`;
  const factor = raw.cone_factor ?? null;
  if (factor !== null && !(factor >= 5 && factor <= 40))
    problems.push(
      inputProblem(at("cone_factor"), factor, "must lie between 5 and 40", "Give Nkt, or leave it out."),
    );
  const weight = raw.unit_weight_n_m3 ?? null;
  if (!(weight !== null && weight >= 8000 && weight <= 25_000)) {
    const message = "a cone reading needs the unit weight of the ground over it, 8000 to 25000 N/m3";
    problems.push(
      inputProblem(at("unit_weight_n_m3"), weight, message, "Give it: peat about 10500, mud about 14500."),
    );
  } else if (over0(raw.value) && isOneOf(readingUnits, raw.unit) && typeof raw.depth_m === "number") {
    if (raw.value! * PA_PER[raw.unit] <= weight * raw.depth_m)
      problems.push(
        inputProblem(
          at("value"),
          raw.value,
          "is no more than the weight of the ground over the cone",
          "Look at value, unit and depth.",
        ),
      );
  }
  return problems;
}

/** Corrects one reading, or says everything that is wrong with it. */
export function correctReading(raw: RawReading, place: string, trace?: Trace): ReadingOutcome {
  const problems = readingProblems(raw, place);
  if (problems.length > 0) return { ok: false, problems };
  const unit = raw.unit as ReadingUnit;
  const was = { value: raw.value!, unit, instrument: raw.instrument as Instrument };
  const read = pascals(raw.value! * PA_PER[unit]);
  const base = { was, material: raw.material as GroundMaterial, depth_m: raw.depth_m! };
  if (was.instrument === "vane")
    return { ok: true, value: { ...base, ...fromVane(read, base.material, raw, trace) } };
  if (was.instrument === "cone")
    return { ok: true, value: { ...base, ...fromCone(read, base.material, raw, trace) } };
  return {
    ok: true,
    value: { ...base, su_pa: read, low_pa: read, high_pa: read, factor: 1, note: "as tested" },
  };
}

type Became = Omit<CorrectedReading, "was" | "material" | "depth_m">;

function fromVane(s_v: Qty<"Pa">, material: GroundMaterial, raw: RawReading, trace?: Trace): Became {
  if (material === "peat") {
    const mu = peatVaneFactor({}, trace);
    const su_pa = vaneStrength({ mu, s_v }, trace);
    const note = "field vane in peat: times 0.5, published factors run from 0.26 to 0.69";
    return { su_pa, low_pa: s_v * peatVaneLow({}), high_pa: s_v * peatVaneHigh({}), factor: mu, note };
  }
  const pi = raw.plasticity_index ?? null;
  if (pi === null) {
    const note = "not corrected: no plasticity index; a field vane in plastic clay reads high";
    const mu = qty(1, "1");
    return { su_pa: s_v, low_pa: s_v * bjerrumFactor({ PI: qty(120, "1") }), high_pa: s_v, factor: mu, note };
  }
  const mu = bjerrumFactor({ PI: qty(Math.min(pi, 120), "1") }, trace);
  const su_pa = vaneStrength({ mu, s_v }, trace);
  const beyond = pi > 120 ? "; the curve ends at 120 and is held there" : "";
  const note = `field vane in clay: times ${mu.toFixed(2)} for a plasticity index of ${pi} % (from memory)${beyond}`;
  return { su_pa, low_pa: su_pa, high_pa: su_pa, factor: mu, note };
}

function fromCone(qc: Qty<"Pa">, material: GroundMaterial, raw: RawReading, trace?: Trace): Became {
  const range = coneFactors[material];
  const own = raw.cone_factor ?? null;
  const N_kt = qty(own ?? range.middle, "1");
  const sigma_v = overburden({ g: qty(raw.unit_weight_n_m3!, "N/m3"), z: metres(raw.depth_m!) }, trace);
  if (qc <= sigma_v) throw new DomainError("cone-under-overburden", { qc, sigma_v });
  recordValue(trace, {
    id: "ground.cone.factor",
    title: "Cone factor",
    symbol: "N_kt",
    value: N_kt,
    unit: "1",
    source:
      own === null
        ? coneFactor
        : { id: "site-cone-factor", title: "The site's own cone factor", status: "project" },
    how: own === null ? "usual for this ground" : "as given",
  });
  const su_pa = coneStrength({ qc, sigma_v, N_kt }, trace);
  const at = (n: number): number => (qc - sigma_v) / n;
  const [low_pa, high_pa] = own === null ? [at(range.high), at(range.low)] : [su_pa, su_pa];
  const words =
    own === null ? `${range.middle} (${range.low} to ${range.high}, from memory)` : `${own}, the site's own`;
  return { su_pa, low_pa, high_pa, factor: 1 / N_kt, note: `cone: net resistance over Nkt ${words}` };
}
