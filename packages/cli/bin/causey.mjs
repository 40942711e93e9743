#!/usr/bin/env node
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";

const built = fileURLToPath(new URL("../dist/main/index.js", import.meta.url));
if (!existsSync(built)) {
  console.error("Causey is not built yet: run `npm start` (or `npm run build`) in its folder first.");
  process.exit(1);
}
const { main } = await import(built);
process.exitCode = await main(process.argv.slice(2));
