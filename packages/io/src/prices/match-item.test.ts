import { expect, test } from "vitest";
import { guessItem, type KnownItem } from "./index.ts";

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
const guess = (words: string) => guessItem(words, [...lumber, ...counted]);

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
