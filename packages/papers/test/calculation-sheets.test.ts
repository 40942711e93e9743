import { showQuantity, showShareOfLimit, STANDARD_GRAVITY } from "@causey/engine/units";
import { beforeAll, describe, expect, test } from "vitest";
import { EFFECTS, effectUnits, governingEffect, showSmall, structureView } from "../src/drawings/index.ts";
import { allShapes, sceneTexts } from "../src/scene/index.ts";
import { allSheets, paperPdf, paperSet, PERMIT_SET, type PaperContext } from "../src/set/index.ts";
import { sheetList } from "../src/sheet-list/index.ts";
import { demoContext } from "./support/demo.ts";
import { extentOf } from "./support/extents.ts";
import { fonts } from "./support/fonts.ts";
import { contextOf } from "./support/marsh.ts";
import { hasPoppler, pdfPages } from "./support/poppler.ts";

const NEW = ["calculations", "limits-card"] as const;
const flat = (texts: readonly string[]): string => texts.join(" ").replaceAll(/\s+/g, " ");
/** Heights of margin, title block and print check at a sheet's foot [mm]: what flows over two pages is read as one. */
const FOOT = 12.7 + 25 + 7;
const wordsOf = (context: PaperContext, id: string): string =>
  flat(
    paperSet(context, [id]).pages.flatMap(({ shapes, height }) =>
      [...allShapes(shapes)].flatMap((s) => (s.kind === "text" && s.at[1] < height - FOOT ? [s.text] : [])),
    ),
  );

test("calculations and card are in the whole set, not among what a permit office asks for", () => {
  const ids = allSheets.map((s) => s.id);
  expect(sheetList.map((s) => s.id)).toEqual(ids);
  expect(ids).toEqual(expect.arrayContaining([...NEW]));
  for (const id of NEW) expect(PERMIT_SET).not.toContain(id);
});

describe.each([
  ["salt-meadow", "letter"],
  ["spring-fen", "a4"],
] as const)("%s on %s", (site, sheet) => {
  let context: PaperContext;
  beforeAll(async () => {
    context = await demoContext(site, sheet);
  });

  /** Peaks, limits and governing loads of every length, as the results hold them. */
  const structureFigures = (): string[] =>
    context.results.proof.frames.flatMap((frame) => {
      const { units } = context.plan;
      const view = structureView(context, frame);
      const limits = [
        ["stringer-bending", "N*m"],
        ["stringer-shear", "N"],
        ["stringer-deflection", "m"],
      ] as const;
      return [
        ...EFFECTS.map((e) => showSmall(frame.peaks[e].value, effectUnits[e], units)),
        ...limits.map(([kind, unit]) => {
          const check = context.results.checks.find((c) => c.id === frame.id.replace("module", kind));
          if (check?.status !== "pass" && check?.status !== "fail") throw new Error(`${kind} was not judged`);
          return `Limit ${showSmall(check.capacity, unit, units)}`;
        }),
        ...frame.peaks[governingEffect(view)].loads.map((l) => showQuantity(l.weight_n, "N", units)),
      ];
    });

  test("every length of module has a page with its peaks, limits and governing loads as the results hold them", () => {
    const pages = paperSet(context, ["calculations"]).pages.filter((p) => p.title.startsWith("Structure: "));
    expect(pages.map((p) => p.title)).toEqual(
      context.results.proof.frames.map((f) => `Structure: ${f.name}`),
    );
    expect(pages.length).toBeGreaterThan(1);
    const words = flat(pages.flatMap((page) => sceneTexts(page.shapes)));
    for (const figure of structureFigures()) expect(words).toContain(figure);
  });

  test.skipIf(!hasPoppler())("the same figures can be read out of the PDF", async () => {
    const set = paperSet(context, NEW);
    const words = flat(pdfPages(await paperPdf(set, context, fonts)));
    for (const figure of structureFigures()) expect(words).toContain(figure);
  });

  test("of each kind of check the one nearest to its limit stands with demand, capacity, share and whole working", () => {
    const words = wordsOf(context, "calculations");
    const { units } = context.plan;
    const judged = context.results.checks.flatMap((c) =>
      c.status === "pass" || c.status === "fail" ? [c] : [],
    );
    const kinds = new Set(judged.map((c) => c.kind));
    expect(kinds.size).toBeGreaterThan(10);
    for (const kind of kinds) {
      const all = judged.filter((c) => c.kind === kind);
      const most = Math.max(...all.map((c) => c.utilisation));
      const check = all.find((c) => c.utilisation === most)!;
      expect(words).toContain(`${check.title}: ${showShareOfLimit(most)} of the limit`);
      expect(words).toContain(
        `${showQuantity(check.demand, check.unit, units)} of ${showQuantity(check.capacity, check.unit, units)}`,
      );
      for (const step of check.working) expect(words).toContain(`${step.title}: ${step.symbol} =`);
    }
  });

  test("every source from memory that a judged check rests on stands among the values to confirm", () => {
    const words = wordsOf(context, "calculations");
    const list = words.slice(words.indexOf("Values from memory"), words.indexOf("Common practice without"));
    const titles = context.results.checks.flatMap((c) =>
      c.status === "pass" || c.status === "fail"
        ? c.working.filter((s) => s.source.status === "memory").map((s) => s.title)
        : [],
    );
    expect(new Set(titles).size).toBeGreaterThan(5);
    for (const title of titles) expect(list).toContain(title);
    for (const caution of context.results.cautions) expect(words).toContain(flat([caution]));
  });

  test("visits, carts and the loads of rules stand among the loads", () => {
    const words = wordsOf(context, "calculations");
    const { visits, units } = context.plan;
    for (const { name, person_kg, cart } of visits) {
      expect(words).toContain(name);
      expect(words).toContain(showQuantity(person_kg, "kg", units));
      if (cart) expect(words).toContain(showQuantity(cart.load_kg, "kg", units));
    }
    expect(words).toContain("One load anywhere on the walkway: ");
  });

  test("the card is one page in type that is read at arm's length, with what the governing checks carry", () => {
    const { pages } = paperSet(context, ["limits-card"]);
    expect(pages).toHaveLength(1);
    const texts = [...allShapes(pages[0]!.shapes)].flatMap((s) => (s.kind === "text" ? [s] : []));
    const bullet = texts.find((t) => t.text === "•")!;
    expect(bullet.size).toBeGreaterThanOrEqual(3.2);
    const words = flat(texts.filter((t) => t.text !== "•").map((t) => t.text));
    const governing = (test: (id: string) => boolean) =>
      context.results.checks
        .flatMap((c) => (c.status === "pass" || c.status === "fail" ? [c] : []))
        .filter((c) => test(c.id))
        .reduce((a, b) => (b.utilisation > a.utilisation ? b : a));
    for (const check of [
      governing((id) => id.startsWith("stringer-")),
      governing((id) => id.startsWith("platform.stringer")),
      governing((id) => id.startsWith("bearing.")),
    ])
      expect(words).toContain(flat([check.backwards.carries]));
  });

  test("the proof load is the case that sags the longest module most, with the sag that the results expect", () => {
    const words = wordsOf(context, "limits-card").replaceAll("• ", "");
    const { units } = context.plan;
    const frame = context.results.proof.frames.toSorted((a, b) => b.length_m - a.length_m)[0]!;
    const { sag } = frame.peaks;
    expect(words).toContain(frame.name);
    expect(words).toContain(`All of it: ${showSmall(sag.value, "m", units)}`);
    expect(words).toContain(`Put half on first: ${showSmall(sag.value / 2, "m", units)}`);
    expect(words).toContain("15 minutes");
    for (const load of sag.loads)
      expect(words).toContain(
        `${showQuantity(load.weight_n / STANDARD_GRAVITY, "kg", units)} at ${showQuantity(load.x_m, "m", units)} from the start`,
      );
  });

  test("the card names the water level and speed that close the walkway, as the results hold them", () => {
    const { flood } = context.results.proof;
    const { units } = context.plan;
    const words = wordsOf(context, "limits-card").replaceAll("• ", "");
    expect(words).toContain(
      `When water reaches ${showQuantity(flood!.closes_at.z_m, "m", units)} on ${context.results.datum}, or runs faster than ${showQuantity(flood!.closes_at.speed_m_s, "m/s", units)}.`,
    );
  });

  test("the card lists what no number catches", () => {
    const words = wordsOf(context, "limits-card");
    for (const item of [
      "end grain",
      "Algae",
      "ends of mesh",
      "Boards lifted",
      "clips",
      "Animals trapped",
      "Predators",
      "Wrack",
      "Biosecurity",
      "Tags of the owner",
      "Public and dogs",
    ])
      expect(words).toContain(item);
  });

  test("nothing leaves the margins of the sheets", () => {
    for (const page of paperSet(context, NEW).pages)
      for (const shape of page.shapes) {
        const box = extentOf(shape);
        if (!box) continue;
        const what = `${page.title}: ${JSON.stringify(shape).slice(0, 120)}`;
        expect(box.x, what).toBeGreaterThan(12.1);
        expect(box.y, what).toBeGreaterThan(24.8);
        expect(box.x + box.width, what).toBeLessThan(page.width - 12.1);
        expect(box.y + box.height, what).toBeLessThan(page.height - 12.1);
      }
  });
});

test("where the results hold no figure the card says so, and makes none up", () => {
  const base = contextOf("metric", "a4");
  const empty: PaperContext = {
    ...base,
    plan: { ...base.plan, visits: [] },
    results: { ...base.results, checks: [], proof: { ...base.results.proof, frames: [] } },
  };
  const words = wordsOf(empty, "limits-card");
  for (const part of ["Module", "Deck", "Platform", "Ground under the supports"])
    expect(words).toContain(`${part}: not worked out yet: ask.`);
  expect(words).toContain("Load and sag: not worked out yet: ask.");
  expect(words).toContain("no cart was asked for; not worked out yet: ask.");
});
