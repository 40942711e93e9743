// `npm run bench`: size against time, and ratios against a public peer in the same run. Asserts nothing.
import { build, install } from "./setup.mjs";

install();
build();
const { report } = await import("./bench/report.mjs");
for (const name of [
  "imports",
  "grid-router",
  "layout",
  "edits",
  "water",
  "cutting",
  "checks",
  "papers",
  "pages",
]) {
  const { rows } = await import(`./bench/${name}.mjs`);
  await report(name, rows);
}
