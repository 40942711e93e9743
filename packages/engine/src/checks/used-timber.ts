import { designCode, type DesignCode, type Found, type Member, type Strengths } from "../codes/index.ts";
import {
  defineFormula,
  inputProblem,
  recordValue,
  type AnyFormula,
  type Source,
  type Trace,
} from "../formula/index.ts";
import type { LumberSize, Tables } from "../materials/index.ts";
import type { Plan } from "../plan/document.ts";
import { M_PER_IN, millimetres, qty, type Qty } from "../units/index.ts";
import type { CheckContext, UsedState } from "./input.ts";
import { findUsedTimber } from "./rule-loads.ts";

const USED: Source = {
  id: "causey-used-timber",
  title: "Project decision on timber that has lain out before",
  status: "project",
};

/** Wood gone from one face. f the first loss [m], c the loss each time it is laid [m], n times laid [1]; f_n [m]. */
export const faceLoss = defineFormula(
  {
    id: "used.face-loss",
    title: "Wood gone from every face",
    symbol: "f_n",
    unit: "m",
    text: "f + c * n",
    inputs: { f: "m", c: "m", n: "1" },
    validity: "Worn and weathered alike on all faces; rot inside is not in it and is sorted out.",
    source: USED,
  },
  ({ f, c, n }) => f + c * n,
);

/** Strength of what is left. F of new timber [Pa], k_u [1]; F_u [Pa]. */
export const usedStrength = defineFormula(
  {
    id: "used.strength",
    title: "Strength of the used timber",
    symbol: "F_u",
    unit: "Pa",
    text: "F * k_u",
    inputs: { F: "Pa", k_u: "1" },
    validity: "0 < k_u <= 1; stiffness is left as it was, the smaller section aside.",
    source: USED,
  },
  ({ F, k_u }) => F * k_u,
);

export const usedTimberFormulas: readonly AnyFormula[] = [faceLoss, usedStrength];

/** The design code of a plan, for what is left of its timber where that has lain out before. */
export function codeOf(
  plan: Pick<Plan, "code" | "proof">,
  tables: Tables,
): Found<Pick<CheckContext, "code" | "used">> {
  const code = designCode(plan.code);
  if (!code.ok) return code;
  const { used_timber } = plan.proof;
  const row = findUsedTimber(tables, used_timber?.grade ?? null);
  if (!row.ok) return row;
  if (!used_timber || !row.value) return { ok: true, value: { code: code.value } };
  const hole = tables.holes.find((h) => h.id === row.value!.hole);
  if (!hole)
    return {
      ok: false,
      problems: [
        inputProblem(
          "proof.used_timber.grade",
          row.value.id,
          `The table of screw holes has no row "${row.value.hole}"`,
          "Choose another grade of used timber.",
        ),
      ],
    };
  const used: UsedState = { grade: row.value, cycles: used_timber.cycles, hole };
  return { ok: true, value: { code: usedCode(code.value, used), used } };
}

const lossOf = ({ grade, cycles }: UsedState, trace?: Trace): Qty<"m"> =>
  faceLoss(
    {
      f: millimetres(grade.face_loss_mm),
      c: millimetres(grade.face_loss_per_cycle_mm),
      n: qty(cycles, "1"),
    },
    trace,
    grade.name,
  );

function smaller(size: LumberSize, loss_m: number): LumberSize {
  const off = (2 * loss_m) / M_PER_IN;
  return { ...size, thickness_in: size.thickness_in - off, width_in: size.width_in - off };
}

const STRENGTHS = ["fb", "fv", "fcp", "fc"] as const;

/** A design code that gives the sections and strengths that used timber has left. */
export function usedCode(code: DesignCode, used: UsedState): DesignCode {
  const k_u = qty(used.grade.strength_share, "1");
  const loss = lossOf(used);
  const share = (trace?: Trace): void =>
    recordValue(trace, {
      id: "used.strength-share",
      title: `${used.grade.name}: share of the strength of new timber`,
      symbol: "k_u",
      value: k_u,
      unit: "1",
      source: { ...USED, status: used.grade.status },
      how: "as tabulated",
    });
  return {
    ...code,
    member: (tables, species, grade, size) => {
      const found = code.member(tables, species, grade, size);
      return found.ok ? leftOf(found.value, loss, used) : found;
    },
    strength: (member, situation, trace, wanted) => {
      const fresh = code.strength(member, situation, trace, wanted);
      if (trace) lossOf(used, trace);
      const asked = STRENGTHS.filter((key) => !wanted || wanted.includes(key));
      if (asked.length > 0) share(trace);
      const left: Partial<Record<(typeof STRENGTHS)[number], Qty<"Pa">>> = {};
      for (const key of STRENGTHS)
        left[key] = usedStrength({ F: fresh[key], k_u }, asked.includes(key) ? trace : undefined, key);
      return { ...fresh, ...left } satisfies Strengths;
    },
    bearing: (member, situation, contact, trace) => {
      const fresh = code.bearing(member, situation, contact, trace);
      share(trace);
      return { ...fresh, strength: usedStrength({ F: fresh.strength, k_u }, trace) };
    },
    notchedShear: (member, situation, notch, trace) => {
      const fresh = code.notchedShear(member, situation, notch, trace);
      share(trace);
      return qty(fresh * k_u, "N");
    },
  };
}

/** Less than this of a side is no timber any more [in]. */
const LEAST_IN = 0.25;

function leftOf(member: Member, loss_m: number, { grade, cycles }: UsedState): Found<Member> {
  const size = smaller(member.size, loss_m);
  if (Math.min(size.thickness_in, size.width_in) >= LEAST_IN) return { ok: true, value: { ...member, size } };
  return {
    ok: false,
    problems: [
      inputProblem(
        "proof.used_timber.cycles",
        cycles,
        `Nothing that carries is left of ${size.id} "${grade.name}" after ${cycles} times laid`,
        "Count the times again, or use new timber.",
      ),
    ],
  };
}
