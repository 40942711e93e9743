import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { canonicalJson, hashJson } from "./index.ts";

test("the hash is SHA-256 of the canonical text, as another implementation finds it", () => {
  const value = { b: [1, 2.5, null], a: "Wörter", c: { z: true, y: -0.1 } };
  expect(canonicalJson(value)).toBe('{"a":"Wörter","b":[1,2.5,null],"c":{"y":-0.1,"z":true}}');
  expect(hashJson(value)).toBe(createHash("sha256").update(canonicalJson(value), "utf8").digest("hex"));
});

test("the order of keys and absent members make no difference; any value does", () => {
  expect(hashJson({ a: 1, b: 2 })).toBe(hashJson({ b: 2, a: 1, c: undefined }));
  expect(hashJson({ a: 1, b: 2 })).not.toBe(hashJson({ a: 1, b: 2.0000001 }));
  expect(hashJson([1, 2])).not.toBe(hashJson([2, 1]));
});

test("what JSON cannot carry is refused, not dropped", () => {
  for (const bad of [NaN, Infinity, { a: NaN }, [() => 1], 10n, [undefined]])
    expect(() => canonicalJson(bad)).toThrow();
});
