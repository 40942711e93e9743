import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { saltMeadowFiles } from "./generator/salt-meadow.ts";

/** Writes examples/salt-meadow. Run: npx tsx --conditions=source examples/make-salt-meadow.ts */
const folder = join(import.meta.dirname, "salt-meadow");
mkdirSync(folder, { recursive: true });
for (const [name, text] of saltMeadowFiles()) {
  writeFileSync(join(folder, name), text);
  console.log(`${name}: ${text.length} bytes`);
}
