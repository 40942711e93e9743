import * as fc from "fast-check";
import { expect, test } from "vitest";
import { DomainError } from "@causey/engine/units";
import { csvBytes, defuse, readCsv, undefuse } from "../src/csv/index.ts";
import { JSON_DEPTH, jsonBytes, parseJson } from "../src/json/index.ts";
import { Findings } from "../src/problem/index.ts";
import { isHelpful, problemsOf, utf8 } from "./support/problems.ts";

const parse = (text: string): unknown => parseJson(new Findings("x.json"), utf8(text), 1e6);

test("property: JSON reads as the language itself reads it (RFC 8259)", () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.constantFrom(0, 2), (value, indent) => {
      const text = JSON.stringify(value, null, indent);
      fc.pre(!text.includes('"__proto__"'));
      expect(parse(text)).toEqual(JSON.parse(text));
    }),
  );
});

test("property: whatever the language refuses is refused here, with line and column", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.string({ unit: fc.constantFrom(...'{}[]":,0-e.\\ntrufals \n'.split("")) }),
      async (text) => {
        let isJson = true;
        try {
          JSON.parse(text);
        } catch {
          isJson = false;
        }
        if (isJson) return;
        const [problem] = await problemsOf(() => parse(text));
        expect(problem!.place).toMatch(/^line \d+, column \d+$/);
        expect(isHelpful(problem!)).toBe(true);
      },
    ),
    { numRuns: 500 },
  );
});

const faults: readonly (readonly [string, string, string, RegExp])[] = [
  ["a comma too many", '{\n  "a": 1,\n}', "line 3, column 1", /key in double quotes/],
  ["a key given twice", '{"a": 1,\n "a": 2}', "line 2, column 2", /given twice/],
  ["__proto__ as a key", '{"__proto__": {"x": 1}}', "line 1, column 2", /__proto__/],
  ["__proto__ written with an escape", '{"\\u005f_proto__": 1}', "line 1, column 2", /__proto__/],
  ["deep nesting", "[".repeat(JSON_DEPTH + 2), "line 1, column 66", /deep/],
  ["a number beyond all bounds", "[1e999]", "line 1, column 2", /too large/],
  ["an open text", '{"a": "b', "line 1, column 7", /does not end/],
  ["a line break in a text", '{"a": "b\nc"}', "line 1, column 9", /line break/],
  ["something after the end", "{} x", "line 1, column 4", /after the end/],
  ["NaN", '{"a": NaN}', "line 1, column 7", /value was expected/],
  ["nothing", "", "line 1, column 1", /ends too early/],
];
test.each(faults)("refused with its place: %s", async (_title, text, place, message) => {
  const [problem] = await problemsOf(() => parse(text));
  expect(problem!.place).toBe(place);
  expect(problem!.message).toMatch(message);
});

test("a million brackets are refused at once, and no prototype is ever touched", async () => {
  await problemsOf(() => parse("[".repeat(999_999)));
  expect(({} as Record<string, unknown>)["x"]).toBeUndefined();
});

test("bytes that are not UTF-8 are refused with the first bad byte; UTF-16 with its mark is read", async () => {
  const bytes = Uint8Array.from([...utf8('{"a": "'), 0xff, 0x22, 0x7d]);
  const [problem] = await problemsOf(() => parseJson(new Findings("x.json"), bytes, 100));
  expect(problem!.place).toBe("byte 7");
  const utf16 = new Uint8Array(Buffer.from('\ufeff{"a": "å"}', "utf16le"));
  expect(parseJson(new Findings("x.json"), utf16, 100)).toEqual({ a: "å" });
  const [large] = await problemsOf(() =>
    parseJson(new Findings("x.json"), utf8(`"${"a".repeat(200)}"`), 100),
  );
  expect(large!.code).toBe("too-large");
});

test("property: written JSON has one form, whatever the order of its keys", () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (value) => {
      const turned = Object.fromEntries(Object.entries(value).reverse());
      expect(jsonBytes(turned)).toEqual(jsonBytes(value));
    }),
  );
  const text = new TextDecoder().decode(jsonBytes({ b: [-0, 1.5], a: undefined, c: null }));
  expect(text).toBe('{\n  "b": [\n    0,\n    1.5\n  ],\n  "c": null\n}\n');
  expect(() => jsonBytes({ a: [1, NaN] })).toThrow(DomainError);
});

test.each(["=1+1", "+A1", "-A1", "@SUM(A1)", "\t=1", "'=1", "''-x", "\r=1"])(
  "the formula %j is defused and comes back",
  (text) => {
    expect(defuse(text)).toBe(`'${text}`);
    expect(undefuse(defuse(text))).toBe(text);
  },
);

test("property: defusing is undone exactly, and no cell of a written file begins as a formula", () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.string(), fc.string()), { minLength: 1 }), (rows) => {
      for (const cell of rows.flat()) expect(undefuse(defuse(cell))).toBe(cell);
      const text = new TextDecoder().decode(csvBytes(["a", "b"], rows));
      for (const line of text.split("\r\n").slice(1)) expect(line).not.toMatch(/^"?[=+@\t-]/);
    }),
  );
});

test("property: cells come back from a written file, quotes, commas and line breaks in them", () => {
  const cell = fc.string({ unit: fc.constantFrom(..."ab,;\"'\n=+- ".split("")) }).map((s) => s.trim());
  fc.assert(
    fc.property(fc.array(fc.tuple(cell, cell, fc.constant("x")), { minLength: 1, maxLength: 20 }), (rows) => {
      const table = readCsv(new Findings("t.csv"), csvBytes(["one", "two", "three"], rows), 1e6, 100);
      expect(table.rows.map((r) => r.cells.map(undefuse))).toEqual(rows);
    }),
  );
});

test("numbers stay numbers: a loss of -3.5 is not turned into text", () => {
  expect(new TextDecoder().decode(csvBytes(["a"], [[-3.5], [null], [-0]]))).toBe("a\r\n-3.5\r\n\r\n0\r\n");
  expect(() => csvBytes(["a"], [[Infinity]])).toThrow(DomainError);
});
