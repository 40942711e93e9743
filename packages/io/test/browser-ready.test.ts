import { readFileSync, readdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";

const source = resolve(import.meta.dirname, "../src");
const topics = readdirSync(source, { withFileTypes: true }).filter((e) => e.isDirectory());

test("only the topic folder needs Node: all others run in a browser too", () => {
  const withNode = topics
    .map((topic) => topic.name)
    .filter((topic) =>
      readdirSync(join(source, topic)).some(
        (name) =>
          !name.endsWith(".test.ts") &&
          /"node:|\bBuffer\b|\bprocess\./.test(readFileSync(join(source, topic, name), "utf8")),
      ),
    );
  expect(topics.length).toBeGreaterThan(10);
  expect(withNode).toEqual(["folder"]);
});

test("the register of coordinate systems and the decoder of ZSTD are loaded when they are needed, not before", () => {
  const files = topics.flatMap((t) => readdirSync(join(source, t.name)).map((n) => join(source, t.name, n)));
  const all = files.map((f) => readFileSync(f, "utf8")).join("\n");
  expect(all).toContain('import("epsg-index/all.json"');
  expect(all).toContain('import("zstddec")');
  expect(all).not.toMatch(/from "(epsg-index|geotiff|zstddec)/);
});
