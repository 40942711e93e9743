import { expect, test } from "vitest";
import { itemGuesser, type KnownItem } from "./index.ts";

const lumber = ["2x4", "2x6", "5/4x6", "4x4"].map((item) => ({
  item,
  names: [`${item} deal, 8 ft`],
  is_lumber: true,
}));
const counted: readonly KnownItem[] = [
  { item: "screw-10x3", names: ["Wood screw #10 x 3 in, galvanised"], is_lumber: false },
  { item: "screw-10x3-316", names: ["Wood screw #10 x 3 in, stainless 316"], is_lumber: false },
  { item: "mesh 1219x914", names: ["Welded mesh, sheet 48 x 36 in"], is_lumber: false },
];
const guess = itemGuesser([...lumber, ...counted]);

test.each([
  ["2x6 treated", "2x6"],
  ["5/4x6 decking", "5/4x6"],
  ['2" x 6" SPF #2 KD, 8 ft', "2x6"],
  ["2 in x 6 in sawn", "2x6"],
  ["2 by 4 stud", "2x4"],
  ["2 × 4", "2x4"],
  ["5/4 x 6 Western Red Cedar deck board", "5/4x6"],
  ["4X4 post", "4x4"],
  ["2x4 deal, 8 ft", "2x4"],
  ["screw-10x3", "screw-10x3"],
  ["wood screw #10 x 3 in, Stainless 316", "screw-10x3-316"],
  ["mesh 1219x914", "mesh 1219x914"],
])("recognised: %s is %s", (words, item) => {
  expect(guess(words)).toMatchObject({ item, strange: [] });
});

test.each([
  ["2x4 joist hanger", "2x4", ["hanger"]],
  ["Sienna 2x6", "2x6", ["sienna"]],
  ["2x6x8 treated", "2x6", ["2x6x8"]],
  ["box of screw 10 x 3, brass", "screw-10x3", ["box", "of", "brass"]],
])("a word that is not understood leaves the row out, with what it may be: %s", (words, perhaps, strange) => {
  expect(guess(words)).toEqual(expect.objectContaining({ item: null, perhaps, strange }));
});

test.each(["", "38x140 C16", "2x4 to 2x6 post plate", "delivery", "2x10 treated"])(
  "not recognised: %s",
  (words) => {
    expect(guess(words)).toMatchObject({ item: null, perhaps: null });
  },
);

test("only what makes no difference is named beside a board", () => {
  expect(guess("2x6 treated, 8 ft").unheeded).toEqual(["treated"]);
  expect(guess("2x6").unheeded).toEqual([]);
});

test("words under which the list knows an item name it again, and what makes no difference is told again", () => {
  const learned = itemGuesser([
    { item: "2x6", names: ["2x6 treated"], is_lumber: true },
    { item: "2x4", names: ["Studs from the barn"], is_lumber: true },
  ]);
  expect(learned("2x6 treated")).toMatchObject({ item: "2x6", unheeded: ["treated"] });
  expect(learned("studs from the barn")).toMatchObject({ item: "2x4", unheeded: [], strange: [] });
});

test("words that two items share name neither of them", () => {
  const both = itemGuesser(["clip-a", "clip-b"].map((item) => ({ item, names: ["Clip"], is_lumber: false })));
  expect(both("clip").item).toBeNull();
  expect(both("clip-b").item).toBe("clip-b");
});
