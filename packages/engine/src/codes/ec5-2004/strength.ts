import { recordValue, type Constant, type Trace } from "../../formula/index.ts";
import type { Tabled } from "../../materials/index.ts";
import { inches, metres, qty, type Qty } from "../../units/index.ts";
import type { Member, Situation, Strengths, Wanted } from "../contract.ts";
import { durationClass, kmod, serviceClass } from "./duration.ts";
import { crackFactor, depthFactor, gammaM, incisingFactors, noFactor, sharingFactor } from "./factors.ts";
import { classedMember, type ClassedMember } from "./member.ts";
import { en338 } from "./sources.ts";
import {
  columnFactor,
  columnHelp,
  columnSlenderness,
  lateralBuckling,
  loadOnTop,
  stockyPost,
  type Rectangle,
} from "./stability.ts";
import {
  bearingDesign,
  bendingDesign,
  compressionDesign,
  shearDesign,
  stiffness,
} from "./strength-formulas.ts";

/** A factor that does not apply stays out of the working: the formula that takes it shows the 1. */
const use = (constant: Constant<"1">, trace?: Trace): Qty<"1"> =>
  constant({}, constant === noFactor ? undefined : trace);

const NAMES = {
  fm_k: "Bending strength, characteristic",
  fv_k: "Shear strength, characteristic",
  fc0_k: "Compression strength along the grain, characteristic",
  fc90_k: "Compression strength across the grain, characteristic",
  e0_mean: "Stiffness along the grain, mean",
  e0_05: "Stiffness along the grain, lower",
  g_mean: "Shear stiffness, mean",
} as const;

/** A tabulated value of the class in Pa, entered in the working with its table. */
export function tabulated(
  { grade }: Pick<ClassedMember, "grade">,
  which: keyof typeof NAMES,
  trace?: Trace,
): Qty<"Pa"> {
  const row: Tabled = grade[`${which}_mpa`];
  const value = qty(row.value * 1e6, "Pa");
  recordValue(trace, {
    id: `ec5-2004.class.${which.replaceAll("_", "-")}`,
    title: NAMES[which],
    symbol: which.startsWith("e0") ? "E_0" : which,
    value,
    unit: "Pa",
    source: en338(`Table 1, ${grade.grade.toUpperCase()}`, row.status),
    how: `${row.value} N/mm2, as tabulated`,
  });
  return value;
}

/** Breadth and depth as the member stands. */
export const standing = ({ size }: Pick<Member, "size">, use_: Situation["use"]): Rectangle => {
  const [t, w] = [inches(size.thickness_in), inches(size.width_in)];
  return use_ === "flat" ? { b: w, h: t } : { b: t, h: w };
};

/**
 * Design strengths of solid softwood, Eurocode 5: to be held against loads with the factors of a combination.
 *
 * Wet service is class 3, dry class 2. The system factor is taken on bending only. Shear is on the full breadth, the
 * loss by cracks inside. Stiffness is that at once. `trace` receives the whole working of what is `wanted`.
 */
export function strength(
  found: Member,
  situation: Situation,
  trace?: Trace,
  wanted: readonly Wanted[] = ["fb", "fv", "fcp", "fc", "e", "emin"],
): Strengths {
  const member = classedMember(found);
  const to = (name: Wanted): Trace | undefined => (wanted.includes(name) ? trace : undefined);
  const stress = wanted.some((w) => w !== "e" && w !== "emin") ? trace : undefined;
  const k = {
    kmod: kmod[serviceClass(situation.wet)][durationClass[situation.duration]]({}, stress),
    gM: gammaM({}, stress),
    kinc: use(
      situation.incised ? incisingFactors.strength : noFactor,
      wanted.some((w) => w === "fb" || w === "fv" || w === "fc") ? trace : undefined,
    ),
  };
  const beam = situation.unbraced_m === undefined ? undefined : to("fb");
  const post = situation.column_m === undefined ? undefined : to("fc");
  const lower = beam ?? post ?? to("emin");
  const kinc_e = use(situation.incised ? incisingFactors.stiffness : noFactor, lower ?? to("e"));
  const E_05 = tabulated(member, "e0_05", lower);
  const emin = stiffness({ E_0: E_05, kinc: kinc_e }, lower, "lower value");
  const bending = bendingOf(member, situation, k, emin, to("fb"));
  const fc0_k = tabulated(member, "fc0_k", to("fc"));
  const kc = columnOf(member, situation, { fc0_k, E_05: emin }, post);
  const kcr = crackFactor({}, to("fv"));
  return {
    fb: bending.value,
    fv: shearDesign({ fv_k: tabulated(member, "fv_k", to("fv")), kcr, ...k }, to("fv")),
    fcp: bearingDesign({ fc90_k: tabulated(member, "fc90_k", to("fcp")), ...k }, to("fcp")),
    fc: compressionDesign({ fc0_k, kc, ...k }, to("fc")),
    e: stiffness({ E_0: tabulated(member, "e0_mean", to("e")), kinc: kinc_e }, to("e")),
    emin,
    factors: { kmod: k.kmod, gamma_m: k.gM, kinc: k.kinc, kinc_e, kcr, kc, ...bending.factors },
  };
}

interface Common {
  readonly kmod: Qty<"1">;
  readonly gM: Qty<"1">;
  readonly kinc: Qty<"1">;
}

function bendingOf(member: ClassedMember, situation: Situation, k: Common, E_05: Qty<"Pa">, trace?: Trace) {
  const { b, h } = standing(member, situation.use);
  const fm_k = tabulated(member, "fm_k", trace);
  const kh = depthFactor({ h }, trace);
  const ksys = use(situation.repetitive ? sharingFactor : noFactor, trace);
  const isFree = situation.unbraced_m !== undefined && h > b;
  const lef = isFree ? loadOnTop(situation.unbraced_m, h, situation.unbraced_load ?? "uniform", trace) : null;
  const kcrit = lef === null ? qty(1, "1") : lateralBuckling({ b, h }, lef, fm_k, E_05, trace).kcrit;
  return { value: bendingDesign({ fm_k, kh, ksys, kcrit, ...k }, trace), factors: { kh, ksys, kcrit } };
}

/** kc over the thinner side; 1 for a stocky post and for one held all along. */
function columnOf(
  { size }: ClassedMember,
  { column_m }: Situation,
  values: { readonly fc0_k: Qty<"Pa">; readonly E_05: Qty<"Pa"> },
  trace?: Trace,
): Qty<"1"> {
  if (column_m === undefined) return qty(1, "1");
  const t = inches(Math.min(size.thickness_in, size.width_in));
  const lam = columnSlenderness({ l: metres(column_m), t, ...values }, trace);
  if (lam <= stockyPost({}, trace)) return qty(1, "1");
  return columnFactor({ k: columnHelp({ lam }, trace), lam }, trace);
}
