import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { springFenFiles } from "./generator/spring-fen.ts";

/** Writes examples/spring-fen. Run: npx tsx --conditions=source examples/make-spring-fen.ts */
const folder = join(import.meta.dirname, "spring-fen");
mkdirSync(folder, { recursive: true });
for (const [name, text] of springFenFiles()) {
  writeFileSync(join(folder, name), text);
  console.log(`${name}: ${text.length} bytes`);
}
