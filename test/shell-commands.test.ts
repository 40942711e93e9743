import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { causey, demoFolder, folderOf, temporaryFolder } from "./support/shell.ts";

test("help names every command; an unknown one says which there are", () => {
  expect(causey([]).out).toMatch(/causey plan DIR --out OUT/);
  const unknown = causey(["fly"]);
  expect(unknown.code).toBe(2);
  expect(unknown.error).toContain("new, import, check, plan");
});

test("causey new makes a folder that checks, and never writes over one that is there", () => {
  const folder = join(temporaryFolder(), "marsh");
  expect(causey(["new", folder]).code).toBe(0);
  expect(existsSync(join(folder, "README.txt"))).toBe(true);
  writeFileSync(join(folder, "notes.txt"), "mine");
  const again = causey(["new", folder]);
  expect(again.code).toBe(2);
  expect(readFileSync(join(folder, "notes.txt"), "utf8")).toBe("mine");
});

test("causey check lists all problems at once, each with file, place, value and mend, and writes nothing", () => {
  const files = new Map(
    ["plan.json", "terrain.asc", "zones.geojson", "places.geojson", "prices.csv", "tide-table.csv"].map(
      (name) => [name, readFileSync(join(demoFolder, name), "utf8")],
    ),
  );
  const plan = JSON.parse(files.get("plan.json")!) as { terrain: { datum: string }; schema: number };
  plan.terrain.datum = "Another datum";
  files.set("plan.json", JSON.stringify(plan));
  files.set(
    "places.geojson",
    files
      .get("places.geojson")!
      .replace('"name":"Trap plot 2', '"name":"Trap plot 1')
      .replace("Trap plot 1, beyond Quillet Creek", "Trap plot 1, high meadow"),
  );
  files.set("prices.csv", files.get("prices.csv")!.replaceAll("USD", ""));
  const folder = folderOf(files);
  const ran = causey(["check", folder, "--json"]);
  expect(ran.code).toBe(2);
  const { problems } = JSON.parse(ran.out) as {
    problems: { file: string; place: string; message: string; mend: string }[];
  };
  expect([...new Set(problems.map((p) => p.file))].sort()).toEqual([
    "places.geojson",
    "plan.json",
    "prices.csv",
  ]);
  for (const p of problems)
    for (const text of [p.place, p.message, p.mend]) expect(text.length).toBeGreaterThan(1);
  const out = join(temporaryFolder(), "out");
  expect(causey(["plan", folder, "--out", out]).code).toBe(2);
  expect(existsSync(out)).toBe(false);
});

test("causey calc lists every calculation with kind, inputs, outputs and sources", () => {
  const list = JSON.parse(causey(["calc", "--list", "--json"]).out) as {
    id: string;
    kind: string;
    sources: unknown[];
  }[];
  const ids = list.map((c) => c.id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ["timber.adjusted-values", "timber.joist-span", "cutting.plan", "grid.path"])
    expect(ids).toContain(id);
  for (const c of list) {
    expect(["formula", "method"]).toContain(c.kind);
    expect(c.sources.length, c.id).toBeGreaterThan(0);
  }
});

test("timber.joist-span: Southern Pine No.2 2x8 at 16 in, wet: 11 ft 10 in (AWC DCA 6, 2015 IRC edition, Table 2)", () => {
  const input = {
    code: "us-asd-2018",
    species: "southern-pine",
    grade: "no2",
    size: "2x8",
    spacing_mm: 406.4,
    live_pa: 1915.2,
    dead_pa: 478.8,
    wet: true,
    incised: false,
    repetitive: true,
    live_limit: 360,
  };
  const { ok, outputs } = JSON.parse(
    causey(["calc", "timber.joist-span", "--in", "-", "--json"], JSON.stringify(input)).out,
  ) as { ok: boolean; outputs: { span_mm: number; governs: string } };
  expect(ok).toBe(true);
  expect(Math.abs(outputs.span_mm - 142 * 25.4)).toBeLessThanOrEqual(25.4);
  expect(outputs.governs).toBe("bending");
});

test("cutting.plan in its fixed shape", () => {
  const input = {
    kerf_mm: 3,
    stock: [{ length_mm: 3658, price: 9.5 }],
    pieces: [{ length_mm: 483, count: 60 }],
  };
  const { outputs } = JSON.parse(
    causey(["calc", "cutting.plan", "--in", "-", "--json"], JSON.stringify(input)).out,
  ) as { outputs: { cost: number; bound: number; proven: boolean; stock_used: unknown } };
  // 7 pieces of 483 mm and 6 cuts of 3 mm take 3,399 mm of a 3,658 mm stick; 60 pieces need 9 sticks.
  expect(outputs).toMatchObject({ cost: 85.5, proven: true, stock_used: [{ length_mm: 3658, count: 9 }] });
  expect(outputs.bound).toBeLessThanOrEqual(85.5);
});

test("grid.path resolves map_file beside its input file", () => {
  const folder = folderOf(
    new Map([
      ["m.map", "type octile\nheight 3\nwidth 3\nmap\n...\n.@.\n...\n"],
      [
        "in.json",
        JSON.stringify({
          map_file: "m.map",
          queries: [
            [0, 0, 2, 2],
            [0, 0, 1, 1],
          ],
        }),
      ],
    ]),
  );
  const { outputs } = JSON.parse(
    causey(["calc", "grid.path", "--in", join(folder, "in.json"), "--json"]).out,
  ) as { outputs: { lengths: (number | null)[] } };
  expect(outputs.lengths).toEqual([4, null]);
});

test("bad input to a calculation: exit code 2, every fault named", () => {
  const ran = causey(
    ["calc", "timber.joist-span", "--in", "-", "--json"],
    JSON.stringify({ code: "us-asd-2018", species: "oak", spacing_mm: -1 }),
  );
  expect(ran.code).toBe(2);
  const { ok, problems } = JSON.parse(ran.out) as { ok: boolean; problems: { place: string }[] };
  expect(ok).toBe(false);
  expect(problems.length).toBeGreaterThan(3);
});
