import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { planJsonSchema } from "@causey/io/plan";
import { resultsJsonSchema } from "@causey/io/results";

/**
 * Writes the published schemas of the file formats:
 *
 *   npx tsx --conditions=source tools/schema.ts
 *
 * A test fails when the files and the code that reads them drift apart.
 */
const schemas: Readonly<Record<string, object>> = {
  "docs/schema/plan.schema.json": planJsonSchema(),
  "docs/schema/results.schema.json": resultsJsonSchema(),
};

const root = resolve(import.meta.dirname, "..");
for (const [path, schema] of Object.entries(schemas)) {
  const file = resolve(root, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, `${JSON.stringify(schema, null, 2)}\n`);
}
