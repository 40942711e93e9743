import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import { usAsd2018 } from "../codes/index.ts";
import { M_PER_IN, N_PER_LBF, PA_PER_PSI } from "../units/index.ts";
import { checkCrossPiece, type CrossPiece } from "./cross-piece.ts";
import { checkDeckBoards } from "./deck-boards.ts";
import { checkDeckMesh, strandsUnder } from "./deck-mesh.ts";
import type { CheckResult } from "./types.ts";
import type { WalkDemand } from "./walk-demand.ts";

const context = { tables, code: usAsd2018, units: "us" } as const;
const pine = { species: "southern-pine", grade: "no2", incised: false } as const;
const onePerson: WalkDemand = { name: "visit", people: 1, person_kg: 90, spacing_mm: 1500, cart: null };
const cart = {
  name: "Cart",
  empty_kg: 20,
  load_kg: 180,
  wet_kg: 0,
  width_mm: null,
  length_mm: null,
  track_mm: 254,
  axle_distance_mm: 0,
  axles: 1,
  wheel_width_mm: 50,
  wheel_contact_mm: 60,
} as const;

type Judged = Extract<CheckResult, { status: "pass" | "fail" }>;
function judged(results: readonly CheckResult[], id: string): Judged {
  const found = results.find((r) => r.id === id);
  if (found?.status !== "pass" && found?.status !== "fail")
    throw new Error(`${id}: ${JSON.stringify(found)}`);
  return found;
}
const near = (value: number, expected: number, share = 0.002): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(share);

describe("cross pieces (worked by hand from NDS 2018 factors)", () => {
  const piece: CrossPiece = {
    size: "2x6",
    lay: "flat",
    span_m: 24 * M_PER_IN,
    lumber: pine,
    screw: "screw-10x3",
    screws_per_end: 2,
    side_m: 1.5 * M_PER_IN,
  };
  const label = { id: "cross-piece", kind: "cross-piece", name: "Cross piece 2x6", parts: ["M1"] } as const;
  const results = checkCrossPiece(piece, [onePerson], label, context);

  test("2x6 flat on 24 in under 300 lb: 1800 lb in against 1150 psi x 2.0625 in3 (from memory, Cfu 1.15, wet)", () => {
    const r = judged(results, "cross-piece.bending");
    near(r.demand / N_PER_LBF / M_PER_IN, 1800);
    near(r.capacity / N_PER_LBF / M_PER_IN, 1150 * 2.0625);
    near(r.utilisation, 873 / 1150);
    expect(r.backwards.carries).toBe("Carries one foot of at most 395 lb on one piece.");
  });

  test("shear: the load stands beside a stringer and counts in full", () => {
    const r = judged(results, "cross-piece.shear");
    near(r.demand / N_PER_LBF, 300);
    near(r.capacity / N_PER_LBF, (2 / 3) * 175 * 0.97 * 8.25);
  });

  test("two #10 x 3 screws in wet end grain carry 2 x 117.5 x 0.7 x 0.67 lb (yield mode IV, Rd 2.4 on the shank)", () => {
    const r = judged(results, "cross-piece.screws");
    const Fe = 16_600 * 0.55 ** 1.84;
    const modeIV = (0.152 ** 2 / 2.4) * Math.sqrt((2 * Fe * 80_000) / (3 * 2));
    near(r.capacity / N_PER_LBF, 2 * modeIV * 0.7 * 0.67, 1e-6);
    expect(r.status).toBe("fail");
    expect(r.governs).toContain("yield mode IV");
  });

  test("backwards: no count of screws that fits on the end passes, so a cleat is named", () => {
    expect(judged(results, "cross-piece.screws").backwards.change).toMatch(/cleat/);
  });

  test("backwards: on a wider end, more of a stouter screw do fit, and then pass", () => {
    const wide = { ...piece, size: "2x8", screw: "screw-14x5" };
    const one = checkCrossPiece({ ...wide, screws_per_end: 1 }, [onePerson], label, context);
    const change = judged(one, "cross-piece.screws").backwards.change!;
    const count = Number(/Would pass with (\d) screws at each end/.exec(change)![1]);
    const enough = checkCrossPiece({ ...wide, screws_per_end: count }, [onePerson], label, context);
    expect(judged(enough, "cross-piece.screws").status).toBe("pass");
    const fewer = checkCrossPiece({ ...wide, screws_per_end: count - 1 }, [onePerson], label, context);
    expect(judged(fewer, "cross-piece.screws").status).toBe("fail");
  });

  test("a screw that reaches in less than 6 diameters carries nothing", () => {
    const short = checkCrossPiece({ ...piece, screw: "screw-10x2" }, [onePerson], label, context);
    expect(judged(short, "cross-piece.screws").capacity).toBe(0);
    expect(judged(short, "cross-piece.screws").status).toBe("fail");
  });

  test("an unknown screw, or a clip, cannot be checked", () => {
    for (const screw of ["screw-7x1", "mesh-clip"]) {
      const r = checkCrossPiece({ ...piece, screw }, [onePerson], label, context).find(
        (x) => x.id === "cross-piece.screws",
      );
      expect(r?.status).toBe("cannot-check");
    }
  });

  test("an axle with both wheels on the piece governs over one foot when it is heavier", () => {
    const heavy = checkCrossPiece(piece, [{ ...onePerson, cart }], label, context);
    const r = judged(heavy, "cross-piece.bending");
    expect(r.governs).toBe("one axle of Cart with its load");
    // Two wheels of 200 kg x g x 1.25 / 2 = 1225.8 N, 10 in apart on 24 in: P/2L (L - a/2)^2.
    near(r.demand, (1225.83 / (2 * 24)) * (24 - 5) ** 2 * M_PER_IN);
  });

  test("backwards: a failing piece is told a stouter size or another lay that passes", () => {
    const weak = { ...piece, size: "2x2", span_m: 30 * M_PER_IN };
    const r = judged(checkCrossPiece(weak, [onePerson], label, context), "cross-piece.bending");
    expect(r.status).toBe("fail");
    const size = /Would pass with (\S+) laid flat/.exec(r.backwards.change!)![1]!;
    const better = checkCrossPiece({ ...weak, size }, [onePerson], label, context);
    expect(judged(better, "cross-piece.bending").status).toBe("pass");
  });
});

describe("deck boards", () => {
  const setup = {
    board: { size: "5/4x6", lay: "flat", span_m: 16 * M_PER_IN, lumber: pine },
    clear_width_m: 36 * M_PER_IN,
    overall_m: 34 * M_PER_IN,
    stringers: 3,
  } as const;
  const label = { id: "deck", kind: "deck", name: "Deck board", parts: [] } as const;

  test("5/4x6 on 16 in: 300 lb on 2.5 in bends 300 (16/4 - 2.5/8) = 1106 lb in; 5/4 boards gain nothing for size or lay", () => {
    const r = judged(checkDeckBoards(setup, [onePerson], label, context), "deck.bending");
    near(r.demand / N_PER_LBF / M_PER_IN, 1106.25);
    near(r.capacity / N_PER_LBF / M_PER_IN, 1000 * 0.91667);
    expect(r.working.some((s) => s.source.id === "causey-timber")).toBe(true);
    expect(r.caution).toMatch(/under 2 in nominal/);
    expect(r.backwards.change).toMatch(/Would pass with 2x6 laid flat/);
  });

  test("a board that reaches far past the outer stringer is held by its overhang", () => {
    const wide = { ...setup, board: { ...setup.board, size: "2x6" }, clear_width_m: 60 * M_PER_IN };
    const r = judged(checkDeckBoards(wide, [onePerson], label, context), "deck.bending");
    expect(r.governs).toBe("one load of 300 lb at the edge");
    near(r.demand / N_PER_LBF / M_PER_IN, 300 * (13 - 0.075 / M_PER_IN));
  });

  test("a person heavier than the rule's load takes its place", () => {
    const heavy = { ...onePerson, person_kg: 180 };
    const r = judged(checkDeckBoards(setup, [heavy], label, context), "deck.deflection");
    expect(r.governs).toBe("one person of 397 lb at the middle");
  });
});

describe("mesh decks", () => {
  const mesh = {
    wire_m: 0.135 * M_PER_IN,
    pitch_m: 2 * M_PER_IN,
    yield_pa: 450e6,
    span_m: 12 * M_PER_IN,
    clip: "mesh-clip",
  };
  const label = { id: "deck", kind: "deck", name: "Mesh deck", parts: [] } as const;

  test("strands under a load: one more than the pitches it spans", () => {
    expect([0.02, 0.0508, 0.0635, 0.1016].map((w) => strandsUnder(w, 0.0508))).toEqual([1, 2, 2, 3]);
  });

  test("two strands of 0.135 in share 300 lb: (E P^2 / 8 A^2)^(1/3) with P 150 lb is 73.7 ksi, over yield", () => {
    const r = judged(checkDeckMesh(mesh, [onePerson], label, context), "deck.strand");
    const A = (Math.PI * 0.135 ** 2) / 4;
    near(r.demand / PA_PER_PSI, ((29e6 * 150 ** 2) / (8 * A ** 2)) ** (1 / 3), 1e-6);
    expect(r.status).toBe("fail");
    const wire = Number(/wire of ([\d.]+) mm/.exec(r.backwards.change!)![1]);
    const thicker = checkDeckMesh({ ...mesh, wire_m: wire / 1000 }, [onePerson], label, context);
    expect(judged(thicker, "deck.strand").status).toBe("pass");
  });

  test("the clips cannot be checked until one was tested, and the answer names the pull", () => {
    const r = checkDeckMesh(mesh, [onePerson], label, context)[1]!;
    expect(r.status === "cannot-check" && r.missing[0]).toMatch(
      /tested capacity of "mesh-clip".*pulls 1,0\d\d lb/,
    );
  });
});
