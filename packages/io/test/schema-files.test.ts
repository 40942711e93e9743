import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { freshPlanFiles } from "../src/fresh/index.ts";
import { planJsonSchema } from "../src/plan/index.ts";
import { resultsJsonSchema } from "../src/results/index.ts";
import { planJson } from "./support/sample-plan.ts";

const published = (name: string): object =>
  JSON.parse(readFileSync(resolve(import.meta.dirname, "../../../docs/schema", name), "utf8")) as object;

test.each([
  ["plan.schema.json", planJsonSchema],
  ["results.schema.json", resultsJsonSchema],
] as const)("docs/schema/%s is what the code makes: run tools/schema.ts after a change", (name, make) => {
  expect(published(name)).toEqual(JSON.parse(JSON.stringify(make())));
});

test("the published schema of plan.json takes what the reader takes and refuses what it refuses (package ajv)", () => {
  const validate = new Ajv2020({ allErrors: true, strict: false, validateFormats: false }).compile(
    published("plan.schema.json"),
  );
  const parse = (text: string): unknown => JSON.parse(text);
  const sound = [planJson(() => undefined), new TextDecoder().decode(freshPlanFiles("x").get("plan.json"))];
  for (const text of sound) expect(validate(parse(text)), JSON.stringify(validate.errors)).toBe(true);
  const wrong: ((d: Record<string, unknown>) => unknown)[] = [
    (d) => (d["schema"] = 4),
    (d) => delete d["removal"],
    (d) => (d["crs"] = { epsg: 1.5 }),
    (d) => (d["kit"] = { ready: "a b" }),
    (d) => (d["extra"] = 1),
    (d) => (d["removal"] = { by: "2029-02-30" }),
  ];
  for (const edit of wrong) expect(validate(parse(planJson(edit))), edit.toString()).toBe(false);
});
