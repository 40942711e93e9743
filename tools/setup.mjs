// Shared by `npm start` and `npm test`: installs and builds what is missing or out of date, and nothing else.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";

export const root = resolve(import.meta.dirname, "..");
const stamps = join(root, ".causey", "stamps");

export function run(command, args, options = {}) {
  const windows = process.platform === "win32";
  const done = spawnSync(command, args, { cwd: root, stdio: "inherit", shell: windows, ...options });
  if (done.error) throw done.error;
  return done.status ?? 1;
}

/** Runs a step unless its inputs are the ones of the last time and its product is there. */
function step(name, key, product, work) {
  const stamp = join(stamps, name);
  const fresh = existsSync(stamp) && readFileSync(stamp, "utf8") === key && existsSync(join(root, product));
  if (fresh) return;
  const status = work();
  if (status !== 0) {
    console.error(
      `Causey: ${name} failed (exit ${status}). Mend what is printed above and run the command again.`,
    );
    process.exit(status);
  }
  mkdirSync(stamps, { recursive: true });
  writeFileSync(stamp, key);
}

export function install() {
  const key = digest(["package-lock.json", "package.json"]);
  step("install", key, "node_modules/.package-lock.json", () => {
    console.log("Causey: installing packages (once) ...");
    return run("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"]);
  });
}

export function build() {
  const key = digest(
    sourceFiles("packages").concat(["tsconfig.json", "tsconfig.base.json", "package-lock.json"]).sort(),
  );
  step("build", key, "packages/web/dist/index.html", () => {
    console.log("Causey: building (once) ...");
    return run("npm", ["run", "--silent", "build"]);
  });
}

function sourceFiles(folder) {
  return readdirSync(join(root, folder)).flatMap((name) => {
    if (name === "node_modules" || name === "dist" || name === "test") return [];
    const path = `${folder}/${name}`;
    return statSync(join(root, path)).isDirectory() ? sourceFiles(path) : [path];
  });
}

function digest(files) {
  const hash = createHash("sha256");
  for (const file of files) hash.update(file).update(readFileSync(join(root, file)));
  return hash.update(process.version).digest("hex");
}
