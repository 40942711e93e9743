import { describe, expect, test } from "vitest";
import { gratingKit, halvesKit, onFloats, onPiles, plywoodKit } from "../../test/support/deck-kits.ts";
import { yardPrices } from "../../test/support/yard-prices.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import { moduleScrews, platformScrews, type Kit } from "../kit/index.ts";
import type { Price } from "../materials/index.ts";
import { kitFigureCalculations, kitFigures, type KitFigure } from "./index.ts";

const IN = 25.4;
const IN3 = 0.0254 ** 3;
const counted = (item: string, price: number): Price => ({
  ...yardPrices.find((p) => p.item === "screw-10x3")!,
  item,
  pack: 1,
  price,
});
const prices = [
  ...yardPrices,
  counted("moulded-grating 1219x610x38", 90),
  counted("plywood 1219x914x19", 30),
  counted("screw-8x2.5", 0.1),
  counted("pile", 140),
  counted("float", 200),
  ...[8, 16].map((ft): Price => ({ ...yardPrices[0]!, item: "4x4", length_mm: ft * 304.8, price: ft * 2 })),
  ...[8, 16].map((ft): Price => ({ ...yardPrices[0]!, item: "5/4x6", length_mm: ft * 304.8, price: ft })),
];
const dry = (1000 * 0.55 * 1.19) / (1 + 0.009 * 0.55 * 19);
const wet = (1000 * 0.55 * 1.75) / (1 + 0.27 * 0.55);

describe("figures of a grating module of 8 ft (by hand)", () => {
  const figures = kitFigures(gratingKit, yardTables, prices, 4);
  const [module] = figures.modules;
  const timber = (2 * 1.5 * 3.5 * 96 + 5 * 1.5 * 3.5 * 19) * IN3;
  const panels = 2 * 47.875 * 24 * 0.0254 ** 2 * 18;

  test("masses, new and soaked, and for each of four carriers", () => {
    expect(module!.mass_new.value).toBeCloseTo(timber * dry + panels, 6);
    expect(module!.mass_soaked.value).toBeCloseTo(timber * wet + panels, 6);
    expect(module!.carrier_new.value).toBeCloseTo((timber * dry + panels) / 4, 6);
    expect(module!.carrier_soaked.value).toBeCloseTo(module!.mass_soaked.value! / 4, 9);
    expect(figures.carriers).toBe(4);
    expect(figures.carrier_limit.value).toBeGreaterThan(5);
  });

  test("pieces, screws, open share", () => {
    expect(module!.pieces.map((p) => [p.role, p.size, p.count])).toEqual([
      ["stringer", "2x4", 2],
      ["cross piece", "2x4", 5],
      ["deck panel", null, 2],
    ]);
    expect(module!.screws).toBe(20 + 12);
    expect(module!.screws).toBe(moduleScrews(gratingKit, 96 * IN, yardTables.sizes).length);
    expect(module!.open!.deck.value).toBeCloseTo((0.25 + 95.75 * 0.7) / 96, 9);
    expect(module!.open!.whole.value).toBe(module!.open!.share.whole);
  });

  test("material cost, for a metre and for a foot of the pitch", () => {
    const { material, per_m, per_ft } = module!.cost!;
    const stick = yardPrices.find((p) => p.item === "2x4" && p.length_mm === 8 * 304.8)!.price;
    const lumber = 2 * stick + (5 * 19 * IN * stick) / 2438;
    expect(material.value).toBeCloseTo(lumber + 20 * 0.1095 + 2 * 90 + 12 * (9.99 / 50), 6);
    expect(per_m.value).toBeCloseTo(material.value! / 2.4384, 9);
    expect(per_ft.value).toBeCloseTo(material.value! / 8, 9);
    expect(figures.unpriced).toEqual([]);
  });
});

test("every figure with a value has a working that ends at it, and a source in every step", () => {
  const kit: Kit = { ...halvesKit, supports: [...halvesKit.supports, onPiles, onFloats] };
  const figures = kitFigures(kit, yardTables, prices, 2);
  const found: KitFigure[] = [];
  const walk = (v: unknown): void => {
    if (typeof v !== "object" || v === null) return;
    if ("working" in v && "missing" in v) found.push(v as KitFigure);
    else Object.values(v).forEach(walk);
  };
  walk(figures);
  expect(found.length).toBeGreaterThan(40);
  for (const f of found) {
    if (f.value === null) throw new Error(`${f.title}: ${f.missing.join()}`);
    expect(f.working.length, f.title).toBeGreaterThan(0);
    expect(f.working.at(-1)!.value, f.title).toBeCloseTo(f.value, 9);
    for (const step of f.working) expect(step.source.title).not.toBe("");
  }
});

describe("a platform in two halves", () => {
  const figures = kitFigures(halvesKit, yardTables, prices, 2);

  test("half the mass each, and all screws but those that join them", () => {
    expect(figures.halves).toHaveLength(2);
    const sum = figures.halves.reduce((kg, h) => kg + h.mass_new.value!, 0);
    expect(sum).toBeCloseTo(figures.platform.mass_new.value!, 9);
    expect(figures.halves[0]!.mass_new.value).toBeCloseTo(figures.halves[1]!.mass_new.value!, 9);
    const screws = figures.halves.reduce((n, h) => n + h.screws, 0);
    expect(screws).toBe(platformScrews(halvesKit, yardTables.sizes).length - 6);
    expect(kitFigures(gratingKit, yardTables, prices, 2).halves).toEqual([]);
  });

  test("ramps: rise at 1 in 8 by hand", () => {
    expect(figures.ramps.map((r) => r.length_mm)).toEqual([47.5 * IN, 95.5 * IN]);
    expect(figures.ramps[1]!.rise.value).toBeCloseTo((95.5 * 0.0254) / Math.sqrt(65), 9);
    expect(figures.ramps[1]!.mass_new.value).toBeGreaterThan(figures.modules[0]!.mass_new.value!);
  });
});

test("soaked plywood carries its water", () => {
  const [module] = kitFigures(plywoodKit, yardTables, prices, 2).modules;
  const timber = (3 * 1.5 * 3.5 * 96 + 10 * 1.5 * 3.5 * 15.25) * IN3;
  const area = 2 * 47.875 * 36 * 0.0254 ** 2;
  expect(module!.mass_soaked.value).toBeCloseTo(timber * wet + area * (10 + 6), 6);
});

test("supports: contact, heights, piles and floats by the piece, and who asks for an engineer", () => {
  const kit: Kit = { ...gratingKit, supports: [gratingKit.supports[0]!, onPiles, onFloats] };
  const [crate, piles, floats] = kitFigures(kit, yardTables, prices, 2).supports;
  expect(crate!.contact.value).toBeCloseTo(2 * 24 * 5.5 * 0.0254 ** 2, 9);
  expect(piles!.contact.value).toBeCloseTo((2 * Math.PI * 0.0603 ** 2) / 4, 9);
  expect(floats!.contact.value).toBeCloseTo(2 * 0.9 * 0.6, 9);
  expect([crate, piles, floats].map((s) => s!.engineer !== null)).toEqual([false, true, true]);
  const bearers = (2 * 3.5 ** 2 * 12 + 1.5 * 5.5 * 38) * IN3;
  expect(piles!.lowest.mass_new.value).toBeCloseTo(bearers * dry + 30, 6);
  expect(piles!.highest.mass_new.value).toBeCloseTo(piles!.lowest.mass_new.value!, 9);
  expect(crate!.highest.mass_new.value).toBeGreaterThan(crate!.lowest.mass_new.value!);
  expect(piles!.lowest.cost.value! - 280).toBeGreaterThan(0);
});

test("what has no price has no cost, and says what is missing; timber that is not known has no mass", () => {
  const figures = kitFigures(gratingKit, yardTables, yardPrices, 2);
  expect(figures.modules[0]!.cost!.material.value).toBeNull();
  expect(figures.modules[0]!.cost!.per_ft.missing.join()).toContain("moulded-grating 1219x610x38");
  const odd = { ...gratingKit, lumber: { ...gratingKit.lumber, species: "oak" } };
  expect(kitFigures(odd, yardTables, prices, 2).modules[0]!.carrier_new).toMatchObject({ value: null });
  expect(() => kitFigures(gratingKit, yardTables, prices, 0)).toThrow("not-a-crew");
});

test("kit.figures gives the same masses to any shell, and refuses a kit with faults", () => {
  const method = kitFigureCalculations.find((c) => c.id === "kit.figures")!;
  const kit = JSON.parse(JSON.stringify(gratingKit)) as never;
  const result = method.run({ kit, carriers: 4 }, { tables: yardTables });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const [module] = result.outputs["modules"] as unknown as {
    mass_new: KitFigure;
    cost: { material: KitFigure };
  }[];
  expect(module!.mass_new.value).toBe(kitFigures(gratingKit, yardTables, [], 4).modules[0]!.mass_new.value);
  expect(module!.cost.material.value).toBeNull();
  const faulty = JSON.parse(JSON.stringify({ ...gratingKit, lengths_mm: [] })) as never;
  expect(method.run({ kit: faulty, carriers: 4 }, { tables: yardTables }).ok).toBe(false);
});
