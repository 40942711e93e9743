import { describe, expect, test } from "vitest";
import { beamLine, solved, uniformLoads } from "../../test/support/frame-lines.ts";
import { assemble, contactFactors, findContact } from "./index.ts";
import type { Grillage } from "./index.ts";

const EI = 2e5;
const near = (got: number, wanted: number, share = 1e-6): void =>
  expect(Math.abs(got - wanted)).toBeLessThanOrEqual(Math.abs(wanted) * share + 1e-12);

describe("closed forms of single beams", () => {
  const slender = { ei: EI, ga: null, gj: 0 };

  test("a load at midspan: PL/4, PL^3/48EI, half of the load at each end", () => {
    const s = solved(beamLine(4, 8, slender, [0, 8]), [{ node: 4, down: 1000 }]);
    near(s.forces[3]!.moment_to, 1000);
    near(s.forces[4]!.moment_from, 1000);
    near(s.w(4), (1000 * 4 ** 3) / (48 * EI));
    near(s.reactions[0]!, 500);
    near(s.forces[0]!.shear, 500);
    near(s.forces[7]!.shear, -500);
  });

  test("a load at a third point: Pab/L under it", () => {
    const s = solved(beamLine(6, 6, slender, [0, 6]), [{ node: 2, down: 900 }]);
    near(s.forces[1]!.moment_to, (900 * 2 * 4) / 6);
    near(s.reactions[0]!, 600);
  });

  test("uniform load with shear deflection: 5wL^4/384EI + wL^2/8GA", () => {
    const line = beamLine(4, 40, { ei: EI, ga: 5e5, gj: 0 }, [0, 40]);
    const s = solved(line, uniformLoads(line, 700));
    near(s.w(20), (5 * 700 * 4 ** 4) / (384 * EI) + (700 * 4 ** 2) / (8 * 5e5), 1e-3);
    near(s.forces[19]!.moment_to, (700 * 16) / 8);
  });

  test("two equal spans under uniform load: -0.125 and 0.0703 wL^2, 0.375 and 1.25 wL", () => {
    const line = beamLine(8, 64, slender, [0, 32, 64]);
    const s = solved(line, uniformLoads(line, 500));
    near(s.forces[31]!.moment_to, -0.125 * 500 * 16, 1e-3);
    near(s.forces[11]!.moment_to, 0.0703125 * 500 * 16, 1e-3);
    near(s.reactions[0]!, 0.375 * 500 * 4, 1e-3);
    near(s.reactions[1]!, 1.25 * 500 * 4, 1e-3);
  });

  test("a bearing that has settled: 3EI/L^3 of a two-span beam of total length 2L pulls half as much at each end", () => {
    const line = beamLine(8, 16, slender, [0, { node: 8, settled_m: 0.01 }, 16]);
    const s = solved(line, []);
    near(s.reactions[1]!, (-48 * EI * 0.01) / 8 ** 3);
    near(s.reactions[0]!, (24 * EI * 0.01) / 8 ** 3);
    near(s.w(8), 0.01);
  });

  test("a hinge in a beam: no moment there, statics beside it", () => {
    const line = beamLine(6, 6, slender, [0, 3, 6]);
    const hinged: Grillage = {
      ...line,
      beams: line.beams.map((b, i) => (i === 3 ? { ...b, free_to: true } : b)),
    };
    const s = solved(hinged, [{ node: 5, down: 300 }]);
    near(s.forces[3]!.moment_to, 0);
    expect(Math.abs(s.forces[3]!.moment_to)).toBeLessThan(1e-6);
    near(s.forces[4]!.moment_to, 150);
    near(s.forces[2]!.moment_to, -150);
  });

  test("torsion: an arm across the middle of a stringer that cannot twist at its ends turns by P e L / 4GJ", () => {
    const [L, gj, e, P] = [4, 3000, 0.5, 800];
    const line = Array.from({ length: 9 }, (_, i) => ({ x: (i * L) / 8, y: 0 }));
    const stiff = { ei: 1e10, ga: null, gj: 1e10 };
    const grillage: Grillage = {
      // Across each end a stiff piece between two bearings keeps the stringer from twisting there.
      nodes: [...line, { x: 0, y: e }, { x: L, y: e }, { x: L / 2, y: e }],
      beams: [
        ...Array.from({ length: 8 }, (_, i) => ({ from: i, to: i + 1, ei: EI, ga: null, gj })),
        { from: 0, to: 9, ...stiff },
        { from: 8, to: 10, ...stiff },
        { from: 4, to: 11, ...stiff },
      ],
      bearings: [0, 8, 9, 10].map((node) => ({ node, settled_m: 0 })),
    };
    const s = solved(grillage, [{ node: 11, down: P }]);
    near(s.w(4), (P * L ** 3) / (48 * EI), 1e-4);
    near((s.w(11) - s.w(4)) / e, (P * e * L) / (4 * gj), 1e-4);
    near(s.forces[0]!.torsion, (-P * e) / 2, 1e-4);
    near(
      s.reactions.reduce((a, b) => a + b, 0),
      P,
      1e-9,
    );
  });
});

describe("bearings that only push", () => {
  /** Two spans of 4 m, a load in the middle of the first: the far end would be pulled down by 0.094 P. */
  const line = beamLine(8, 32, { ei: EI, ga: null, gj: 0 }, [0, 16, 32]);
  const loads = [{ node: 8, down: 1000 }];
  const factors = contactFactors(assemble(line));

  test("the far end lifts; what is left is a simple span with a free tail, by hand PL/4 and a slope PL^2/16EI", () => {
    near(solved(line, loads).reactions[2]!, -0.09375 * 1000);
    const contact = findContact(factors, loads);
    expect(contact).toEqual([true, true, false]);
    const s = solved(line, loads, contact!);
    near(s.w(8), (1000 * 4 ** 3) / (48 * EI));
    near(-s.w(32), ((1000 * 4 ** 2) / (16 * EI)) * 4);
    near(s.reactions[0]!, 500);
  });

  test("a load over the far end presses it down again", () => {
    expect(findContact(factors, [...loads, { node: 24, down: 1000 }])).toEqual([true, true, true]);
  });

  test("a bearing far below stays clear until the load bends the beam down to it: by hand 48 EI s / L^3", () => {
    const low = beamLine(4, 16, { ei: EI, ga: null, gj: 0 }, [0, { node: 8, settled_m: 0.01 }, 16]);
    const touch = (48 * EI * 0.01) / 4 ** 3;
    const at = (down: number) => findContact(contactFactors(assemble(low)), [{ node: 8, down }]);
    expect(at(touch * 0.99)).toEqual([true, false, true]);
    expect(at(touch * 1.01)).toEqual([true, true, true]);
    near(solved(low, [{ node: 8, down: touch * 1.5 }]).reactions[1]!, touch * 0.5);
  });

  test("a load on an overhang with nothing to hold it down tips the beam", () => {
    const short = beamLine(4, 8, { ei: EI, ga: null, gj: 0 }, [0, 4]);
    expect(findContact(contactFactors(assemble(short)), [{ node: 8, down: 100 }])).toBeNull();
  });

  test("a table on four legs, one of them short: it stands on three, the load shared as statics has it", () => {
    const stiff = { ei: 1e8, ga: null, gj: 1e8 };
    const table: Grillage = {
      nodes: [
        { x: 0, y: 0 },
        { x: 0, y: 1 },
        { x: 1, y: 0 },
        { x: 1, y: 1 },
      ],
      beams: [
        { from: 0, to: 1, ...stiff },
        { from: 0, to: 2, ...stiff },
        { from: 1, to: 3, ...stiff },
        { from: 2, to: 3, ...stiff },
      ],
      bearings: [0, 1, 2, 3].map((node) => ({ node, settled_m: node === 0 ? 0.02 : 0 })),
    };
    const on = [
      { node: 3, down: 500 },
      { node: 1, down: 10 },
      { node: 2, down: 10 },
    ];
    const contact = findContact(contactFactors(assemble(table)), on)!;
    expect(contact).toEqual([false, true, true, true]);
    const s = solved(table, on, contact);
    for (const [i, wanted] of [0, 10, 10, 500].entries()) expect(s.reactions[i]!).toBeCloseTo(wanted, 4);
  });
});

test("a beam without length, a bearing without a node and a stiffness of nothing are refused", () => {
  const good = beamLine(4, 4, { ei: EI, ga: null, gj: 0 }, [0, 4]);
  expect(() => assemble({ ...good, bearings: [{ node: 9, settled_m: 0 }] })).toThrow("bearing-without-node");
  expect(() => assemble({ ...good, beams: [{ from: 0, to: 0, ei: 1, ga: null, gj: 0 }] })).toThrow(
    "beam-without-stiffness",
  );
  expect(() => assemble({ ...good, beams: [{ from: 0, to: 1, ei: 0, ga: null, gj: 0 }] })).toThrow(
    "beam-without-stiffness",
  );
  expect(() => assemble({ ...good, beams: [{ from: 0, to: 7, ei: 1, ga: null, gj: 0 }] })).toThrow(
    "beam-without-node",
  );
});
