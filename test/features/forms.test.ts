// Row of the feature table on forms and drawings. A Maryland guide on permit drawings (slideplayer.com/slide/4240164):
// dimensions on the form must equal those on the plan, or the file is rejected.
import { summary } from "@causey/papers/summary";
import { resultFiles } from "@causey/io/results";
import { beforeAll, describe, expect, test } from "vitest";
import { deriveLane, sheetTexts, type Derived } from "../support/lane-plan.ts";

const flat = (texts: readonly string[]): string => texts.join(" ").replaceAll(/\s+/g, " ");
const FT = 0.3048;

/** Feet and inches to 1/16 in, worked out here: "59 ft 9 1/2 in". */
function feetAndInches(m: number): string {
  const sixteenths = Math.round((m / 0.0254) * 16);
  const [feet, rest] = [Math.floor(sixteenths / 192), sixteenths % 192];
  const [inches, part] = [Math.floor(rest / 16), rest % 16];
  const shrink = (n: number, d: number): string =>
    n % 2 === 0 && n > 0 ? shrink(n / 2, d / 2) : `${n}/${d}`;
  const words = [
    feet > 0 ? `${feet} ft` : "",
    inches > 0 || part > 0
      ? `${[inches > 0 ? inches : "", part > 0 ? shrink(part, 16) : ""].filter((w) => w !== "").join(" ")} in`
      : "",
  ];
  return words.filter((w) => w !== "").join(" ");
}
const squareFeet = (m2: number): string => `${Math.round(m2 / FT ** 2).toLocaleString("en-US")} sq ft`;

describe("54 the same length, width and area on form and drawings: one source", () => {
  let near: Derived;
  let far: Derived;
  beforeAll(async () => {
    near = await deriveLane({ long: 60 });
    far = await deriveLane({ long: 60, plots: { P1: [4, 50] } });
  });

  /** Places of the papers at which each figure must stand: the summary that forms are filled from, and the drawings. */
  const places = ["summary", "site-plan"] as const;

  test.each(["near", "far"] as const)(
    "%s plot: the results' values, worked out by hand, stand on each",
    (which) => {
      const d = which === "near" ? near : far;
      const { parts, joints } = d.results.layout;
      const at = new Map(joints.map((j) => [j.id, j]));
      const length = parts.reduce((sum, p) => {
        const [a, b] = [at.get(p.from)!, at.get(p.kind === "module" ? p.to : p.exits.ahead)!];
        return sum + Math.hypot(a.x - b.x, a.y - b.y);
      }, 0);
      const shaded = parts.reduce((sum, p) => sum + ringArea(p.outline[0]![0]!), 0);
      const touched = joints.reduce(
        (sum, j) => sum + j.feet.reduce((s, foot) => s + ringArea(foot[0]!), 0),
        0,
      );
      const figures = {
        length: feetAndInches(length),
        width: feetAndInches(d.plan.kit.deck.width_mm / 1000),
        shaded: squareFeet(shaded),
        touched: squareFeet(touched),
      };
      for (const place of places)
        for (const [name, words] of Object.entries(figures))
          expect(flat(sheetTexts(d, place)), `${name} on ${place}`).toContain(words);
      const text = summary(d.results, d.plan);
      for (const words of [figures.length, figures.shaded, figures.touched]) expect(text).toContain(words);
      const geojson = JSON.parse(
        new TextDecoder().decode(resultFiles(d.results, d.plan).get("layout.geojson")),
      ) as { figures: Record<string, number> };
      expect(geojson.figures["length_m"]).toBeCloseTo(length, 6);
      expect(geojson.figures["shaded_m2"]).toBeCloseTo(shaded, 6);
      expect(geojson.figures["contact_m2"]).toBeCloseTo(touched, 6);
    },
  );

  test("when the plan changes, form and drawings change together: no old figure is left on any sheet", () => {
    const [a, b] = [near.results.evaluation, far.results.evaluation];
    expect(a.length_m).not.toBeCloseTo(b.length_m, 1);
    for (const place of places) {
      const texts = flat(sheetTexts(far, place));
      expect(texts).toContain(feetAndInches(b.length_m));
      expect(texts).not.toContain(`Length ${feetAndInches(a.length_m)}`);
      expect(texts).not.toContain(`Length of walkway ${feetAndInches(a.length_m)}`);
      expect(texts).not.toContain(`Shaded ${squareFeet(a.shaded_m2)}`);
    }
  });

  test("the width of the deck on the cross-section is that of the form", () => {
    const width = feetAndInches(near.plan.kit.deck.width_mm / 1000);
    expect(flat(sheetTexts(near, "cross-section"))).toContain(width);
  });

  test("500 ft by 4 ft are 2000 sq ft, 0.0459 acre, 185.8 m2 (arithmetic), as the figures are shown", () => {
    const m2 = 500 * FT * 4 * FT;
    expect(m2).toBeCloseTo(185.8, 1);
    expect(m2 / 4046.8564224).toBeCloseTo(0.0459, 4);
    expect(squareFeet(m2)).toBe("2,000 sq ft");
  });
});

const ringArea = (ring: readonly (readonly [number, number])[]): number =>
  Math.abs(
    ring.reduce((sum, [x, y], i) => {
      const [u, v] = ring[(i + 1) % ring.length]!;
      return sum + x * v - u * y;
    }, 0) / 2,
  );
