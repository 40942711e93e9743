import { recordValue, type Constant, type Source, type Trace } from "../../formula/index.ts";
import type { Tabled } from "../../materials/index.ts";
import { inches, psi, qty, type Qty } from "../../units/index.ts";
import type { Member as AnyMember, Situation, Strengths, Wanted } from "../contract.ts";
import {
  adjustedBearing,
  adjustedBending,
  adjustedCompression,
  adjustedShear,
  adjustedStiffness,
  bendingBeforeStability,
} from "./adjusted-formulas.ts";
import { durationFactors } from "./duration.ts";
import { gradedMember, type GradedMember as Member } from "./member.ts";
import { incisingFactors, noFactor, repetitiveFactor, wetFactors, wetTriggers } from "./service-factors.ts";
import { bendingSizeFactor, compressionSizeFactor, flatUseFactor, widthRow } from "./size-factors.ts";
import { supplement } from "./sources.ts";
import {
  beamSlenderness,
  beamStabilityFactor,
  columnStabilityFactor,
  criticalBendingStress,
  criticalColumnStress,
  effectiveLength,
  slendernessLimit,
  stressRatio,
} from "./stability.ts";

const one = (v: number): Qty<"1"> => qty(v, "1");
/** A factor that does not apply stays out of the working: the formula that takes it shows the 1. */
const use = (constant: Constant<"1">, trace?: Trace): Qty<"1"> =>
  constant({}, constant === noFactor ? undefined : trace);

/** Source of a tabulated value: Table 4B where the size factor is inside, else Table 4A. */
const tableOf = (member: Member, status: Source["status"]): Source =>
  supplement(`${member.grade.size_factor_inside ? "Table 4B" : "Table 4A"}, ${member.grade.name}`, status);

/** A tabulated reference value in Pa, entered in the working with its table. */
function reference(member: Member, name: string, title: string, row: Tabled, trace?: Trace): Qty<"Pa"> {
  const value = psi(row.value);
  recordValue(trace, {
    id: `us-asd-2018.reference.${name.toLowerCase()}`,
    title,
    symbol: name,
    value,
    unit: "Pa",
    source: tableOf(member, row.status),
    how: `${row.value} psi, as tabulated`,
  });
  return value;
}

const sized = (member: Member, rows: Readonly<Record<string, Tabled>>): Tabled =>
  rows[member.grade.size_factor_inside ? widthRow(member.size) : "all"]!;

/** Breadth and depth as the member stands. */
const standing = (member: Member, flat: boolean): { b: Qty<"m">; d: Qty<"m"> } => {
  const [t, w] = [inches(member.size.thickness_in), inches(member.size.width_in)];
  return flat ? { b: w, d: t } : { b: t, d: w };
};

/**
 * Strengths of sawn lumber in allowable stress design, NDS 2018.
 *
 * Every factor of Table 4.3.1 is applied but Ct, CT and Cb, which are 1 here: up to 38 C, no truss chord, bearing at
 * an end. A beam more slender than RB 50 is not allowed: its CL is given as 0. `trace` receives the whole working.
 */
export function strength(
  found: AnyMember,
  situation: Situation,
  trace?: Trace,
  wanted: readonly Wanted[] = ["fb", "fv", "fcp", "fc", "e", "emin"],
): Strengths {
  const member = gradedMember(found);
  const to = (name: Wanted): Trace | undefined => (wanted.includes(name) ? trace : undefined);
  const stress = wanted.some((w) => w === "fb" || w === "fv" || w === "fc") ? trace : undefined;
  const e = stiffness(member, situation, "e", to("e"));
  const beam = situation.unbraced_m === undefined ? undefined : to("fb");
  const leans = beam ?? (situation.column_m === undefined ? undefined : to("fc"));
  const emin = stiffness(member, situation, "emin", leans ?? to("emin"));
  const CD = use(durationFactors[situation.duration], stress);
  const Ci = use(situation.incised ? incisingFactors.strength : noFactor, stress);
  const common = { CD, Ci, emin: emin.value };
  const bending = bendingStrength(member, situation, common, to("fb"));
  const compression = compressionStrength(member, situation, common, to("fc"));
  const shear = shearStrength(member, situation, common, to("fv"));
  const bearing = bearingStrength(member, situation, to("fcp"));
  return {
    fb: bending.value,
    fv: shear.value,
    fcp: bearing.value,
    fc: compression.value,
    e: e.value,
    emin: emin.value,
    factors: {
      cd: CD,
      ci: Ci,
      ...e.factors,
      ...bending.factors,
      ...shear.factors,
      ...bearing.factors,
      ...compression.factors,
    },
  };
}

function stiffness(member: Member, situation: Situation, which: "e" | "emin", trace?: Trace) {
  const { grade } = member;
  const CM = use(situation.wet ? wetFactors.e : noFactor, trace);
  const Ci = use(situation.incised ? incisingFactors.stiffness : noFactor, trace);
  const E =
    which === "e"
      ? reference(member, "E", "Stiffness as tabulated", grade.e_psi, trace)
      : reference(member, "Emin", "Least stiffness as tabulated", grade.emin_psi, trace);
  const value = adjustedStiffness({ E, CM, Ci }, trace, which === "e" ? undefined : "for Emin");
  return { value, factors: { cm_e: CM, ci_e: Ci } };
}

interface Common {
  readonly CD: Qty<"1">;
  readonly Ci: Qty<"1">;
}
interface WithEmin extends Common {
  readonly emin: Qty<"Pa">;
}

function bendingStrength(member: Member, situation: Situation, common: WithEmin, trace?: Trace) {
  const { CD, Ci, emin } = common;
  const Fb = reference(
    member,
    "Fb",
    "Bending strength as tabulated",
    sized(member, member.grade.fb_psi),
    trace,
  );
  const CF = use(bendingSizeFactor(member.size, member.grade.size_factor_inside), trace);
  const Cfu = use(flatUseFactor(member.size, situation.use), trace);
  const isLow = Fb * CF <= wetTriggers.fb({}, situation.wet ? trace : undefined) * (1 + 1e-12);
  const CM = use(situation.wet ? (isLow ? wetFactors.fb_low : wetFactors.fb) : noFactor, trace);
  const Cr = use(situation.repetitive ? repetitiveFactor : noFactor, trace);
  const star = bendingBeforeStability({ Fb, CD, CM, CF, Ci, Cr }, situation.unbraced_m ? trace : undefined);
  const CL = beamStability(member, situation, star, emin, trace);
  const value = adjustedBending({ Fb, CD, CM, CL, CF, Cfu, Ci, Cr }, trace);
  return { value, factors: { cm_fb: CM, cf_fb: CF, cfu: Cfu, cr: Cr, cl: CL } };
}

function beamStability(
  member: Member,
  situation: Situation,
  star: Qty<"Pa">,
  emin: Qty<"Pa">,
  trace?: Trace,
) {
  const { b, d } = standing(member, situation.use === "flat");
  if (situation.unbraced_m === undefined || d <= b) return one(1);
  const le = effectiveLength(situation.unbraced_m, d, situation.unbraced_load ?? "uniform", trace);
  const RB = beamSlenderness({ le, d, b }, trace);
  if (RB > slendernessLimit({}, trace)) return tooSlender(RB, "CL", trace);
  const FbE = criticalBendingStress({ Emin: emin, RB }, trace);
  return beamStabilityFactor({ F: stressRatio({ a: FbE, b: star }, trace) }, trace);
}

function tooSlender(ratio: number, symbol: string, trace?: Trace): Qty<"1"> {
  recordValue(trace, {
    id: "us-asd-2018.too-slender",
    title: "Too slender: the code does not allow it",
    symbol,
    value: 0,
    unit: "1",
    source: slendernessLimit.spec.source,
    how: `slenderness ${ratio.toFixed(1)} is over 50`,
  });
  return one(0);
}

function compressionStrength(member: Member, situation: Situation, common: WithEmin, trace?: Trace) {
  const { CD, Ci, emin } = common;
  const own = situation.column_m === undefined ? undefined : trace;
  const Fc = reference(
    member,
    "Fc",
    "Compression strength as tabulated",
    sized(member, member.grade.fc_psi),
    own,
  );
  const CF = use(compressionSizeFactor(member.size, member.grade.size_factor_inside), own);
  const isLow = Fc * CF <= wetTriggers.fc({}, situation.wet ? own : undefined) * (1 + 1e-12);
  const CM = use(situation.wet ? (isLow ? wetFactors.fc_low : wetFactors.fc) : noFactor, own);
  const star = adjustedCompression({ Fc, CD, CM, CF, Ci, CP: one(1) }, own, "before column stability: Fc*");
  const CP = columnStability(member, situation, star, emin, own);
  const value = adjustedCompression({ Fc, CD, CM, CF, Ci, CP }, own);
  return { value, factors: { cm_fc: CM, cf_fc: CF, cp: CP } };
}

function columnStability(
  member: Member,
  situation: Situation,
  star: Qty<"Pa">,
  emin: Qty<"Pa">,
  trace?: Trace,
) {
  if (situation.column_m === undefined) return one(1);
  const s = one(situation.column_m / inches(Math.min(member.size.thickness_in, member.size.width_in)));
  if (s > slendernessLimit({}, trace)) return tooSlender(s, "CP", trace);
  const FcE = criticalColumnStress({ Emin: emin, s }, trace);
  return columnStabilityFactor({ F: stressRatio({ a: FcE, b: star }, trace) }, trace);
}

function shearStrength(member: Member, situation: Situation, { CD, Ci }: Common, trace?: Trace) {
  const Fv = reference(member, "Fv", "Shear strength as tabulated", member.grade.fv_psi, trace);
  const CM = use(situation.wet ? wetFactors.fv : noFactor, trace);
  return { value: adjustedShear({ Fv, CD, CM, Ci }, trace), factors: { cm_fv: CM } };
}

function bearingStrength(member: Member, situation: Situation, trace?: Trace) {
  const row = member.grade.fcp_psi;
  const Fcp = reference(member, "Fcp", "Bearing strength across the grain as tabulated", row, trace);
  const CM = use(situation.wet ? wetFactors.fcp : noFactor, trace);
  return { value: adjustedBearing({ Fcp, CM }, trace), factors: { cm_fcp: CM } };
}
