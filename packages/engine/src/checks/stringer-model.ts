import type { Combination, Found, Member, Situation, Strengths } from "../codes/index.ts";
import { peaksOf, type Peaks, type Runner } from "../module-frame/index.ts";
import {
  rectangleArea,
  rectangleInertia,
  rectangleSectionModulus,
  uniformMoment,
  uniformShear,
} from "../structure/index.ts";
import { inches, metres, qty, type Qty } from "../units/index.ts";
import { strengthCombinations } from "./combination.ts";
import { allowedDeflection, deadLoad, momentCapacity, shearCapacity } from "./formulas.ts";
import { deadShare, isRepetitive, shareTable, type Frame } from "./frame.ts";
import { casesOn, frameStructure, knowsKinds, stateRunners, type FrameStructure } from "./frame-analysis.ts";
import type { CheckContext } from "./input.ts";
import { deflectionLimit } from "./rules.ts";
import type { LoadCase } from "./walk-demand.ts";

export type StringerCheck = "bending" | "shear" | "deflection";

/** What a stringer carries under one combination of the code, with the strengths of its duration. */
export interface Held {
  readonly combination: Combination;
  readonly strengths: Strengths;
  readonly bending: Qty<"N*m">;
  readonly shear: Qty<"N">;
}

/** A frame with its strengths and section worked out once. */
export interface StringerModel {
  readonly frame: Frame;
  readonly member: Member;
  readonly section: { readonly b: Qty<"m">; readonly d: Qty<"m"> };
  readonly share: ReturnType<typeof shareTable>;
  /** Dead demand of each check on the most loaded stringer. */
  readonly dead: Readonly<Record<StringerCheck, number>>;
  readonly held: readonly Held[];
  /** Live deflection that the limit allows [m]. */
  readonly allowed: Qty<"m">;
  readonly stiffness: number;
  /** Peaks of the whole frame with its cross pieces stiff at their ends; null where the frame's build is not known. */
  readonly stiff: (cases: readonly LoadCase[]) => Peaks | null;
}

export const situationOf = (frame: Frame, { duration }: Pick<Combination, "duration">): Situation => ({
  use: "edge",
  wet: true,
  incised: frame.lumber.incised,
  repetitive: isRepetitive(frame),
  duration,
  unbraced_m: frame.brace_m,
});

/** Looks up the timber and works out what does not depend on the load. */
export function stringerModel(frame: Frame, context: CheckContext): Found<StringerModel> {
  const { tables, code } = context;
  const { species, grade } = frame.lumber;
  const found = code.member(tables, species, grade, frame.size);
  if (!found.ok) return found;
  const member = found.value;
  const section = { b: inches(member.size.thickness_in), d: inches(member.size.width_in) };
  const held = strengthCombinations(code).map((combination): Held => {
    const strengths = code.strength(member, situationOf(frame, combination));
    return {
      combination,
      strengths,
      bending: momentCapacity({ F: strengths.fb, S: rectangleSectionModulus(section) }),
      shear: shearCapacity({ F: strengths.fv, A: rectangleArea(section) }),
    };
  });
  const L = metres(frame.span_m);
  const w = deadLoad({ q: qty(frame.dead_kg_m, "kg/m"), k: qty(deadShare(frame), "1") });
  return {
    ok: true,
    value: {
      frame,
      member,
      section,
      share: shareTable(frame),
      dead: { bending: uniformMoment({ w, L }), shear: uniformShear({ w, L }), deflection: 0 },
      held,
      allowed: allowedDeflection({ L, n: deflectionLimit({}) }),
      stiffness: held[0]!.strengths.e * rectangleInertia(section),
      stiff: stiffPeaks(frame, context),
    },
  };
}

/**
 * Remembers the frame's peaks by the list of cases: all checks of a part ask with the same one. The frame itself is
 * built once for the first cases and stands for all whose loads are of the same kinds.
 */
function stiffPeaks(frame: Frame, context: CheckContext): StringerModel["stiff"] {
  const known = new WeakMap<readonly LoadCase[], Peaks>();
  let built: { readonly structure: FrameStructure; readonly runners: readonly Runner[] } | undefined;
  return (cases) => {
    // A platform is cross-braced both ways and short: each stringer by itself asks for more.
    if (!frame.build || frame.build.platform_sill_m !== null) return null;
    let peaks = known.get(cases);
    if (peaks) return peaks;
    if (!built || !knowsKinds(built.runners, cases)) {
      const structure = frameStructure(frame, cases, context);
      if (!structure?.ok) return null;
      const state = { name: "stiff", ends: "stiff" } as const;
      built = { structure: structure.value, runners: stateRunners(structure.value, state) };
    }
    peaks = peaksOf(built.runners, casesOn(built.structure, cases));
    known.set(cases, peaks);
    return peaks;
  };
}
