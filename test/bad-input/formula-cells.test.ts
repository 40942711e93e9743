import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import Papa from "papaparse";
import { expect, test } from "vitest";
import { areaGeoJson } from "../support/bad-layers.ts";
import { causey, folderOf, temporaryFolder } from "../support/shell.ts";
import { demoWith } from "../support/survey-plan.ts";

const FORMULA = '=HYPERLINK("http://evil.example","click")';

test("names that are formulas come in as text, and no table that is written holds a cell a spreadsheet would run", () => {
  const named = demoWith((own) => ({
    // One heading instead of twelve: the line does not matter here, and is found in seconds.
    "plan.json": own("plan.json").replace('"heading_step_deg": 15', '"heading_step_deg": 90'),
    "places.geojson": own("places.geojson").replace(
      "Trap plot 1, high meadow",
      JSON.stringify(FORMULA).slice(1, -1),
    ),
    "prices.csv": own("prices.csv").replace('"2x2 framing lumber, 8 ft"', "'=1+1"),
  }));
  const file = join(
    folderOf(new Map([["pans.geojson", areaGeoJson(undefined, "local", FORMULA)]])),
    "pans.geojson",
  );
  const withPan = join(temporaryFolder(), "with-pan");
  const come = causey(["import", named, file, "--as", "areas", "--use", "pool", "--out", withPan]);
  expect(come.code, come.error).toBe(0);
  expect(readFileSync(join(withPan, "zones.geojson"), "utf8")).toContain(JSON.stringify(FORMULA));
  const out = join(temporaryFolder(), "out");
  const ran = causey(["plan", withPan, "--out", out, "--quiet"]);
  expect(ran.code, ran.error).toBe(0);
  const tables = readdirSync(out).filter((name) => name.endsWith(".csv"));
  expect(tables.length).toBeGreaterThan(0);
  let meant = 0;
  for (const name of tables)
    for (const row of Papa.parse<string[]>(readFileSync(join(out, name), "utf8")).data)
      for (const cell of row) {
        if (cell.includes("HYPERLINK") || cell.includes("1+1")) meant += 1;
        const runs = /^[=+\-@\t\r]/.test(cell) && !/^[-+]?\d+(\.\d+)?(e[-+]?\d+)?$/i.test(cell);
        expect(runs, `${name}: ${cell}`).toBe(false);
      }
  expect(meant).toBeGreaterThan(0);
});
