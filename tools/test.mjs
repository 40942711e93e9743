// `npm test`: installs what tests need and runs them all.
import { existsSync, mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { build, install, root, run } from "./setup.mjs";

const reports = join(root, ".test-out");
mkdirSync(reports, { recursive: true });

install();
installMissing();
const browser = findChromium();
build();

const failed = [];
const step = (name, command, args, env = {}) => {
  console.log(`\n== ${name}`);
  const status = run(command, args, { env: { ...process.env, ...env } });
  if (status !== 0) failed.push(name);
};
step("lint", "npm", ["run", "--silent", "lint"]);
step("types of tests", "npx", ["tsc", "-p", "tsconfig.tests.json"]);
const vitest = (name, extra, env) =>
  step(
    name,
    "npx",
    [
      "vitest",
      "run",
      ...extra,
      "--reporter=default",
      "--reporter=json",
      `--outputFile.json=${reports}/${name}.json`,
    ],
    env,
  );
vitest("unit", []);
step("validation page", process.execPath, ["tools/validation.mjs", "--check", `${reports}/unit.json`]);
if (browser) vitest("browser", ["-c", "vitest.browser.config.ts"], { CHROMIUM: browser });
else
  failed.push(
    "browser (no Chromium: install Debian's chromium, or set CHROMIUM to a Chromium or Chrome program)",
  );

const count = { passed: 0, failed: 0, skipped: 0 };
for (const name of ["unit", "browser"]) {
  const file = join(reports, `${name}.json`);
  if (!existsSync(file)) continue;
  const report = JSON.parse(readFileSync(file, "utf8"));
  count.passed += report.numPassedTests;
  count.failed += report.numFailedTests;
  count.skipped += report.numPendingTests + report.numTodoTests;
}
if (count.passed === 0) failed.push("no test ran");
for (const name of failed) console.log(`failed: ${name}`);
if (count.skipped > 0)
  console.log("Left out: tests on open data that is not in CAUSEY_DATA (see the notes above).");
console.log(
  `${count.passed} passed, ${count.failed + (failed.length > 0 && count.failed === 0 ? failed.length : 0)} failed, ${count.skipped} skipped`,
);
process.exitCode = failed.length > 0 ? 1 : 0;

function findChromium() {
  const places = [
    process.env.CHROMIUM,
    "/usr/bin/chromium",
    "/usr/bin/chromium-browser",
    "/usr/bin/google-chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  ];
  return places.find((p) => p && existsSync(p));
}

/** On Debian as root: what is missing, from its packages. Elsewhere the reader is told what to install. */
function installMissing() {
  const missing = [];
  if (!findChromium()) missing.push("chromium");
  if (!existsSync("/usr/bin/strace")) missing.push("strace");
  if (!existsSync("/usr/bin/pdftotext")) missing.push("poppler-utils");
  if (!existsSync("/usr/bin/ogrinfo")) missing.push("gdal-bin");
  if (!existsSync("/usr/bin/ccx")) missing.push("calculix-ccx");
  if (missing.length === 0 || process.getuid?.() !== 0 || !existsSync("/usr/bin/apt-get")) return;
  console.log(`Causey: installing Debian's ${missing.join(" and ")} for the tests ...`);
  const quiet = {
    stdio: ["ignore", "ignore", "inherit"],
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
  };
  run("apt-get", ["update", "-qq"], quiet);
  run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...missing], quiet);
}
