// `npm start`: installs, builds, opens Causey with the demo on an embedded store.
import { join } from "node:path";
import { build, install, root, run } from "./setup.mjs";

const [major] = process.versions.node.split(".").map(Number);
if (major < 20) {
  console.error(`Causey needs Node.js 20 or newer; this is ${process.version}.`);
  process.exit(1);
}
install();
build();
process.exitCode = run(process.execPath, [
  join(root, "packages/cli/bin/causey.mjs"),
  "serve",
  "--open",
  ...process.argv.slice(2),
]);
