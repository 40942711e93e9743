import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import {
  checkedPlan,
  checksInput,
  roundMasses,
  stoutKit,
  straightLayout,
} from "../../test/support/straight-walkway.ts";
import { BLANK_PROOF, type ProofChoice } from "../plan/proof-choice.ts";
import { STANDARD_GRAVITY } from "../units/index.ts";
import { proofProblems, runChecks } from "./index.ts";
import { carryCase } from "./rule-loads.ts";
import type { CheckResult } from "./types.ts";

type Judged = Extract<CheckResult, { status: "pass" | "fail" }>;

const layout = straightLayout([3.6576, 2.4384]);
const plain = runChecks(checksInput({ layout }));
const withProof = (proof: Partial<ProofChoice>): readonly CheckResult[] =>
  runChecks(checksInput({ layout, plan: checkedPlan({ proof: { ...BLANK_PROOF, ...proof } }) }));

function judged(results: readonly CheckResult[], id: string): Judged {
  const found = results.find((r) => r.id === id);
  if (found?.status !== "pass" && found?.status !== "fail")
    throw new Error(`${id}: ${JSON.stringify(found)}`);
  return found;
}
const ratio = (results: readonly CheckResult[], id: string): number => judged(results, id).utilisation;

describe("load rules of a plan", () => {
  const terrace = withProof({ load_rules: ["asce-terrace", "en-footbridge-point"] });

  test("an id that the table lacks leaves nothing checked, and every result names it", () => {
    const results = withProof({ load_rules: ["asce-walkway", "nobody-asks"] });
    expect(results.length).toBeGreaterThan(10);
    for (const r of results) {
      expect(r.status).toBe("cannot-check");
      expect(JSON.stringify(r)).toContain("nobody-asks");
    }
    const [problem, ...more] = proofProblems({ ...BLANK_PROOF, load_rules: ["nobody-asks"] }, tables);
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ place: "proof.load_rules", value: "nobody-asks" });
    expect(problem!.mend).toContain("asce-walkway");
  });

  test("every result of stringers, cross pieces, deck, seats and ground is held against them, none gets easier", () => {
    const kinds = [
      "stringer-bending",
      "stringer-shear",
      "stringer-deflection",
      "cross-piece",
      "deck",
      "seat",
      "bearing",
    ];
    let harder = 0;
    for (const r of plain.filter(
      (p) => kinds.includes(p.kind) && (p.status === "pass" || p.status === "fail"),
    )) {
      const before = ratio(plain, r.id);
      const after = ratio(terrace, r.id);
      expect(after, r.id).toBeGreaterThanOrEqual(before - 1e-12);
      if (after > before * 1.01) harder++;
    }
    expect(harder).toBeGreaterThan(8);
  });

  test("what is carried names each rule, and cautions speak of the rules in place of staff alone", () => {
    const { backwards, caution } = judged(terrace, "stringer-bending.2438mm");
    expect(backwards.carries).toMatch(/100 psf all over/);
    expect(backwards.carries).toMatch(/10 kN on 0.1 x 0.1 m/);
    expect(caution).toContain("these load rules: Terrace, 100 psf all over");
    expect(caution).not.toContain("trained staff");
  });

  test("a rule from memory marks the results that rest on it", () => {
    expect(JSON.stringify(judged(terrace, "stringer-bending.2438mm").working)).toContain("en-1991-2");
    expect(judged(terrace, "stringer-bending.2438mm").from_memory).toBe(true);
  });

  test("named twice, a rule counts once", () => {
    const once = withProof({ load_rules: ["asce-walkway"] });
    expect(JSON.stringify(withProof({ load_rules: ["asce-walkway", "asce-walkway"] }))).toBe(
      JSON.stringify(once),
    );
  });
});

describe("carry party", () => {
  const carry = { people: 4, person_kg: 113.4, load_kg: 80, spacing_mm: 762 };
  test("four carriers at 30 in, each with a quarter of the load", () => {
    const { loads, name } = carryCase(carry, "metric");
    expect(loads.map((l) => l.at)).toEqual([0, 0.762, 1.524, 2.286]);
    for (const { weight } of loads) expect(weight).toBeCloseTo((113.4 + 20) * STANDARD_GRAVITY, 6);
    expect(name).toBe("4 people in step who carry 80.0 kg between them");
  });

  test("it governs the stringers where it is heavier than the visits, and its share is in the working", () => {
    const r = judged(withProof({ carry }), "stringer-bending.3658mm");
    expect(r.governs).toContain("in step");
    expect(r.utilisation).toBeGreaterThan(ratio(plain, "stringer-bending.3658mm"));
    expect(r.working.find((s) => s.id === "check.carried-share")?.value).toBeCloseTo(133.4, 9);
  });
});

/* The soaked mass is read from the lifting check, so that only handling itself is worked here. */
describe("handling", () => {
  const mass = judged(plain, "lifting.soaked.3658mm").demand;
  const L = 3.6576;
  test("lifted by its ends: twice half of its soaked weight on each stringer, seven days' strength 1.25 over ten years'", () => {
    const r = judged(plain, "handling.lift.3658mm");
    const w = (2 * mass * STANDARD_GRAVITY) / L / 2;
    expect(r.demand).toBeCloseTo((w * L ** 2) / 8, 6);
    const years = judged(plain, "stringer-bending.3658mm").capacity;
    // Sideways buckling takes a little more of the higher strength.
    expect(r.capacity / years).toBeGreaterThan(1.2);
    expect(r.capacity / years).toBeLessThan(1.25);
    expect(r.status).toBe("pass");
    const times = /hold ([\d.]+) times/.exec(r.backwards.carries)![1]!;
    expect(Number(times)).toBeCloseTo((2 * r.capacity) / r.demand, 1);
  });

  test("none stacked: it does not apply, and says how many may be", () => {
    const r = plain.find((p) => p.id === "handling.stack.2438mm");
    expect(r?.status).toBe("not-applicable");
    expect(r && "because" in r ? r.because : "").toMatch(/\d+ may be stacked while people walk beside/);
  });

  test("stacked: own weight, as many more, and those who walk; the most that may be stacked passes, one more fails", () => {
    const said = plain.find((p) => p.id === "handling.stack.2438mm")!;
    const may = Number(/(\d+) may be/.exec("because" in said ? said.because : "")![1]);
    expect(may).toBeGreaterThan(0);
    expect(may).toBeLessThan(20);
    const fine = judged(withProof({ stacked_modules: may }), "handling.stack.2438mm");
    const over = judged(withProof({ stacked_modules: may + 1 }), "handling.stack.2438mm");
    expect([fine.status, over.status]).toEqual(["pass", "fail"]);
    expect(over.backwards.change).toBe(`Stack at most ${may} on one module.`);
    const step = (r: Judged, id: string) => r.working.find((s) => s.id === id)!.value;
    if (fine.unit === "N*m") {
      const own = (judged(plain, "lifting.soaked.2438mm").demand * STANDARD_GRAVITY * 2.4384) / 8 / 2;
      const walk = fine.working.find((s) => s.symbol === "M_w")!.value;
      expect(fine.demand).toBeCloseTo(own * (1 + may) + walk, 6);
    }
    expect(step(over, "check.stack-load") / step(fine, "check.stack-load")).toBeCloseTo((may + 1) / may, 9);
  });
});

describe("feel", () => {
  test("each length has its liveliness and its lasting deflection, both called a preference", () => {
    const feel = plain.filter((r) => r.kind === "feel");
    expect(feel.map((r) => r.id).sort()).toEqual([
      "feel.bounce.2438mm",
      "feel.bounce.3658mm",
      "feel.sag.2438mm",
      "feel.sag.3658mm",
    ]);
    for (const r of feel) {
      expect(r.title).toContain("preference");
      expect(r.caution).toContain("not a matter of safety");
    }
  });

  test("a module half as long beats faster by the square, when its weight per length is one", () => {
    const long = judged(plain, "feel.bounce.3658mm").capacity;
    const short = judged(plain, "feel.bounce.2438mm").capacity;
    expect(short / long).toBeCloseTo((3.6576 / 2.4384) ** 2, 6);
  });

  test("lasting deflection: own weight twice (Kcr 2.0, wet), people once, against L/180", () => {
    const r = judged(plain, "feel.sag.3658mm");
    const step = (symbol: string): number => r.working.find((s) => s.symbol === symbol)!.value;
    const live = judged(plain, "stringer-deflection.3658mm").demand;
    expect(r.demand).toBeCloseTo(2 * step("delta") + live, 9);
    expect(r.capacity).toBeCloseTo(3.6576 / 180, 9);
  });

  test("a long light module of small stringers is lively: told as failing, with what would mend it", () => {
    const kit = { ...stoutKit, stringers: { ...stoutKit.stringers, size: "2x4" as const } };
    const results = runChecks(
      checksInput({
        plan: checkedPlan({ kit }),
        layout: straightLayout([7]),
        masses: { ...roundMasses, module: (length_m) => ({ timber_m3: 0, other_kg: 16 * length_m }) },
      }),
    );
    const r = judged(results, "feel.bounce.7000mm");
    expect(r.status).toBe("fail");
    expect(r.backwards.change).toMatch(/Would pass with 2x/);
  });
});

describe("used timber", () => {
  const used = withProof({ used_timber: { grade: "weathered", cycles: 3 } });

  test("2x8: 1.5 + 3 x 0.5 = 3 mm off every face, and 0.75 of the strength of what is left", () => {
    const r = judged(used, "stringer-bending.2438mm");
    const [b, d] = [38.1 - 6, 184.15 - 6];
    const S = r.working.find((s) => s.title === "Section modulus")!.value;
    expect(S).toBeCloseTo((b * d ** 2) / 6 / 1e9, 9);
    expect(r.working.find((s) => s.id === "used.face-loss")!.value).toBeCloseTo(0.003, 9);
    const F = r.working.find((s) => s.id === "used.strength")!;
    expect(r.capacity).toBeCloseTo(F.value * S, 6);
    const fresh = F.inputs.find((i) => i.symbol === "F")!.value;
    expect(F.value).toBeCloseTo(0.75 * fresh, 3);
  });

  test("screws in used holes hold 0.8 of fresh ones, as the table of holes says, timber alike", () => {
    const fresh = judged(plain, "cross-piece.screws");
    expect(judged(used, "cross-piece.screws").capacity / fresh.capacity).toBeCloseTo(0.8, 6);
  });

  test("every check of timber says so and how to sort it; ground and lifting do not", () => {
    for (const r of used) {
      const says = r.caution.startsWith("Used timber, laid 3 times before: Weathered");
      expect(says, r.id).toBe(
        /^(stringer|cross-piece|deck$|seat|damage|feel|handling|supports|fastening)/.test(r.kind),
      );
    }
  });

  test("no check of timber gets easier with age, and more cycles never help", () => {
    const older = withProof({ used_timber: { grade: "weathered", cycles: 6 } });
    for (const r of plain)
      if (
        /^(stringer|cross-piece|seat.bearing|handling|feel)/.test(r.id) &&
        (r.status === "pass" || r.status === "fail")
      ) {
        expect(ratio(used, r.id), r.id).toBeGreaterThanOrEqual(r.utilisation - 1e-12);
        expect(ratio(older, r.id), r.id).toBeGreaterThanOrEqual(ratio(used, r.id) - 1e-12);
      }
  });

  test("a grade that the table lacks, and timber worn to nothing, cannot be checked", () => {
    expect(JSON.stringify(withProof({ used_timber: { grade: "driftwood", cycles: 1 } })[0])).toContain(
      "driftwood",
    );
    const gone = withProof({ used_timber: { grade: "worn", cycles: 20 } });
    for (const r of gone) expect(r.status).toBe("cannot-check");
    expect(JSON.stringify(gone[0])).toContain("Nothing that carries is left");
  });
});

test("a blank proof is the same plan, byte for byte", () => {
  expect(JSON.stringify(withProof({}))).toBe(JSON.stringify(plain));
});

test("under Eurocode 5 the same proof gives results for every kind, all finite", () => {
  const kit = {
    ...stoutKit,
    lumber: { ...stoutKit.lumber, species: "softwood", grade: "c24" },
  };
  const proof: ProofChoice = {
    ...BLANK_PROOF,
    load_rules: ["en-footbridge", "iso-floor-point"],
    carry: { people: 3, person_kg: 90, load_kg: 60, spacing_mm: 900 },
    stacked_modules: 2,
    used_timber: { grade: "sound", cycles: 1 },
  };
  const results = runChecks(
    checksInput({ layout, plan: checkedPlan({ kit, proof, code: "ec5-2004", units: "metric" }) }),
  );
  for (const id of [
    "handling.lift.2438mm",
    "handling.stack.2438mm",
    "feel.bounce.2438mm",
    "feel.sag.2438mm",
    "stringer-bending.2438mm",
  ]) {
    const r = judged(results, id);
    expect(Number.isFinite(r.utilisation), id).toBe(true);
    expect(r.rule.title, id).not.toMatch(/NDS/);
  }
  // Own weight by 1.35: twice it while it is lifted.
  const lift = judged(results, "handling.lift.2438mm");
  const mass = judged(results, "lifting.soaked.2438mm").demand;
  expect(lift.demand).toBeCloseTo((1.35 * 2 * mass * STANDARD_GRAVITY * 2.4384) / 8 / 2, 6);
});
