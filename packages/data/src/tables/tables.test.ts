import { hashJson } from "@causey/engine/formula";
import { expect, test } from "vitest";
import { tables } from "./index.ts";

const statuses = ["seen", "memory", "computed", "practice", "project"];

/** Every object of the tables that carries a `source` and a `status`, with the path to it. */
function sourced(value: unknown, path = "tables"): { path: string; source: unknown; status: unknown }[] {
  if (typeof value !== "object" || value === null) return [];
  const own = value as Record<string, unknown>;
  const here = "source" in own ? [{ path, source: own["source"], status: own["status"] }] : [];
  return [...here, ...Object.entries(own).flatMap(([key, v]) => sourced(v, `${path}.${key}`))];
}

test("every table value names a listed source and a known status", () => {
  const rows = sourced({ ...tables, sources: {} });
  expect(rows.length).toBeGreaterThan(200);
  const faults = rows.filter(
    (r) => !(String(r.source) in tables.sources) || !statuses.includes(String(r.status)),
  );
  expect(faults).toEqual([]);
});

test("ids are unique in each table", () => {
  for (const rows of [
    tables.grades,
    tables.sizes,
    tables.fasteners,
    tables.preservatives,
    tables.drag_coefficients,
  ]) {
    const ids = rows.map((r) => r.id);
    expect(new Set(ids).size).toBe(ids.length);
  }
});

test("a better grade of one species is never weaker, a wider Southern Pine piece never stronger", () => {
  const order = ["ss", "no1", "no2", "no3"];
  for (const a of tables.grades)
    for (const b of tables.grades)
      if (a.species === b.species && order.indexOf(a.grade) < order.indexOf(b.grade))
        for (const width of Object.keys(a.fb_psi))
          expect(a.fb_psi[width]!.value, `${a.id} over ${b.id}`).toBeGreaterThanOrEqual(
            b.fb_psi[width]!.value,
          );
  for (const g of tables.grades.filter((g) => g.size_factor_inside)) {
    const byWidth = ["4", "6", "8", "10", "12"].map((w) => g.fb_psi[w]!.value);
    expect(byWidth).toEqual([...byWidth].sort((a, b) => b - a));
  }
});

test("Southern Pine psi values round to the metric values of the Southern Pine Use Guide (as carried in a public library)", () => {
  const metric = {
    ss: [16.2, 14.5, 13.4, 11.7, 11.0],
    no1: [10.3, 9.3, 8.6, 7.2, 6.9],
    no2: [7.6, 6.9, 6.4, 5.5, 5.2],
  };
  for (const [grade, values] of Object.entries(metric)) {
    const row = tables.grades.find((g) => g.id === `southern-pine-${grade}`)!;
    ["4", "6", "8", "10", "12"].forEach((w, i) =>
      expect(Math.abs(row.fb_psi[w]!.value * 0.006894757 - values[i]!)).toBeLessThan(0.051),
    );
  }
});

test("dressed sizes in mm of 2x4, 2x6, 2x8, 2x12 and 5/4x6 (public lumber size charts, PS 20)", () => {
  const printed = {
    "2x4": [38, 89],
    "2x6": [38, 140],
    "2x8": [38, 184],
    "2x12": [38, 286],
    "5/4x6": [25, 140],
  };
  for (const [id, mm] of Object.entries(printed)) {
    const size = tables.sizes.find((s) => s.id === id)!;
    expect([Math.round(size.thickness_in * 25.4), Math.round(size.width_in * 25.4)]).toEqual(mm);
  }
});

test("the version is a hash over the content and changes with one value", () => {
  const { version, ...content } = tables;
  expect(version).toBe(hashJson(content));
  expect(hashJson({ ...content, sizes: content.sizes.slice(1) })).not.toBe(version);
});

test("every fastener has a coating, and its name says the same", () => {
  const words = { "stainless-316": "316", "stainless-304": "304", "plain-zinc": "plain zinc" } as const;
  for (const { id, name, coating } of tables.fasteners) {
    const word = coating in words ? words[coating as keyof typeof words] : null;
    if (word) expect(name, id).toContain(word);
    else expect(name, id).not.toMatch(/316|304|plain zinc/);
  }
  expect(new Set(tables.fasteners.map((f) => f.coating)).size).toBeGreaterThan(3);
});

test("a coating changes neither length nor strength of a screw", () => {
  const plain = tables.fasteners.find((f) => f.id === "screw-10x3")!;
  for (const id of ["screw-10x3-316", "screw-10x3-304", "screw-10x3-zinc"]) {
    const { coating, name, id: own, ...rest } = tables.fasteners.find((f) => f.id === id)!;
    expect([own, coating === plain.coating, name === plain.name]).toEqual([id, false, false]);
    expect({ ...plain, ...rest }).toEqual(plain);
  }
});

test("arsenic and the barred preservatives are known as such", () => {
  const ids = (is: (p: (typeof tables.preservatives)[number]) => boolean): string[] =>
    tables.preservatives.filter(is).map((p) => p.id);
  expect(ids((p) => p.has_arsenic)).toEqual(["acza", "cca"]);
  expect(ids((p) => p.restricted)).toEqual(["cca", "creosote", "penta"]);
  expect(ids((p) => !p.has_copper)).toEqual(["borate", "creosote", "penta"]);
  expect(ids((p) => p.salt_use === "yes")).toEqual(["creosote"]);
});
