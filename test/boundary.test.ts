import { readFileSync, readdirSync, statSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { expect, test } from "vitest";

/** Which package may import which: cli, server, web -> runtime, papers, io, data -> engine. A new arrow needs a decision record. */
const arrows: Readonly<Record<string, readonly string[]>> = {
  engine: [],
  data: ["engine"],
  io: ["engine"],
  papers: ["engine"],
  runtime: ["engine", "data", "io"],
  server: ["engine", "data", "io", "papers", "runtime"],
  cli: ["engine", "data", "io", "papers", "runtime", "server"],
  web: ["engine", "data", "io", "papers", "runtime"],
};

/** Outside packages, each with a line in docs/decisions/0002-packages.md. The engine's must be pure. */
const outside: Readonly<Record<string, readonly string[]>> = {
  engine: ["@noble/hashes", "clipper2-ts", "d3-contour", "delaunator"],
  data: [],
  io: [
    "epsg-index",
    "fflate",
    "geotiff",
    "papaparse",
    "proj4",
    "shpjs",
    "sql.js",
    "temporal-polyfill",
    "zod",
    "zstddec",
  ],
  papers: ["pdfkit", "uqr"],
  runtime: ["highs", "kysely", "libsql"],
  server: ["@hono/node-server", "@neaps/tide-database", "hono"],
  cli: ["@expo-google-fonts/source-sans-3"],
  web: [
    "@expo-google-fonts/source-sans-3",
    "@fontsource/source-sans-3",
    "@mantine/core",
    "@mantine/hooks",
    "react",
    "react-dom",
    "sql.js",
  ],
};
const mayUseNode = new Set(["io", "runtime", "server", "cli"]);

const root = resolve(import.meta.dirname, "..");
interface Import {
  readonly file: string;
  readonly target: string;
}

function sources(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return sources(path);
    return /\.tsx?$/.test(name) && !/\.test\.tsx?$/.test(name) ? [path] : [];
  });
}

function importsOf(file: string): Import[] {
  const text = readFileSync(file, "utf8")
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/^\s*\/\/.*$/gm, "");
  const found = text.matchAll(
    /(?:(?<!["'\w])\bfrom\s*|\bimport\s*\(\s*|\bimport\.meta\.resolve\(\s*|\bimport\s+|new URL\(\s*(?="[^"]+\.tsx?"))"([@.\w][^"\n]*)"/g,
  );
  return [...found].map((m) => ({ file, target: m[1]! }));
}

const packageOf = (target: string): string =>
  target
    .split("/")
    .slice(0, target.startsWith("@") ? 2 : 1)
    .join("/");

for (const name of Object.keys(arrows)) {
  const imports = sources(join(root, "packages", name, "src")).flatMap(importsOf);

  test(`${name}: imports only what its arrows and its package list allow`, () => {
    const faults = imports.filter(({ file, target }) => {
      if (target.startsWith("."))
        return !resolve(dirname(file), target).startsWith(join(root, "packages", name, "src"));
      if (target.startsWith("node:")) return !mayUseNode.has(name);
      if (target.startsWith("@causey/")) return !arrows[name]!.includes(target.split("/")[1]!);
      return !outside[name]!.includes(packageOf(target));
    });
    expect(faults.map((f) => `${relative(root, f.file)} -> ${f.target}`)).toEqual([]);
  });

  test(`${name}: its package.json lists exactly what it imports`, () => {
    const manifest = JSON.parse(readFileSync(join(root, "packages", name, "package.json"), "utf8")) as {
      dependencies?: object;
    };
    const listed = Object.keys(manifest.dependencies ?? {}).filter((d) => !d.startsWith("@causey/"));
    expect(listed.sort()).toEqual([...outside[name]!].sort());
  });

  test(`${name}: no import cycle`, () => {
    const edges = new Map<string, string[]>();
    for (const { file, target } of imports)
      if (target.startsWith("."))
        edges.set(file, [...(edges.get(file) ?? []), resolve(dirname(file), target)]);
    expect(findCycle(edges)).toEqual([]);
  });
}

function findCycle(edges: ReadonlyMap<string, readonly string[]>): string[] {
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (file: string): string[] => {
    if (path.includes(file)) return [...path.slice(path.indexOf(file)), file].map((f) => relative(root, f));
    if (done.has(file)) return [];
    path.push(file);
    for (const next of edges.get(file) ?? []) {
      const cycle = visit(next);
      if (cycle.length > 0) return cycle;
    }
    path.pop();
    done.add(file);
    return [];
  };
  for (const file of edges.keys()) {
    const cycle = visit(file);
    if (cycle.length > 0) return cycle;
  }
  return [];
}

test("the audit shares no code with the search", () => {
  const files = sources(join(root, "packages/engine/src")).filter((f) => f.includes("/audit/"));
  const faults = files
    .flatMap(importsOf)
    .filter(({ target }) => target.startsWith("../") && !target.includes("../formula/"));
  expect(faults.map((f) => `${relative(root, f.file)} -> ${f.target}`)).toEqual([]);
});
