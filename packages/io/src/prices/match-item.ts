import type { ItemGuess, KnownItem } from "./quote-types.ts";

/** Words of a yard that tell treatment, surface, grade or use of a board: its size is the item, whichever it is. */
const BOARD_WORDS: ReadonlySet<string> = new Set(
  `treated untreated preservative pt kdht tanalised incised rated contact ground graded grade ungraded structural
  premium select standard stud studs post posts beam no dimensional dimension decking deck framing fencing joist rafter plank softwood hardwood
  pine spruce fir larch oak cedar redwood whitewood hemlock douglas southern yellow red white western eastern spf syp df hf
  kd kiln dried dry green wet sawn rough planed dressed surfaced par s4s regularised eased edge edged smooth grooved ribbed
  c16 c24 uc3 uc4 uc4a uc4b gc fsc pefc`.split(/\s+/),
);
/** Words that only say that it is a board, or how long: nothing is lost with them. */
const EMPTY_WORDS: ReadonlySet<string> = new Set(
  "a of the and in per each length lengths long lumber timber board boards wood piece ft foot feet mm cm m inch inches nominal".split(
    " ",
  ),
);
const SIZE = /^\d+(?:\/\d+)?x\d+$/;
/** "2x6x8": the third number is likely a length, which is not read out of words. */
const SIZE_AND_LENGTH = /^(\d+(?:\/\d+)?x\d+)x\d+$/;

/** Lower case; inch signs off; "2 x 6", "2 × 6" and "2 by 6" as "2x6". */
const plain = (words: string): string =>
  words
    .normalize("NFKC")
    .toLowerCase()
    .replaceAll(/["″”“]/g, "")
    .replaceAll("⁄", "/")
    .replaceAll(/(?<=\d)\s*(?:in|inch|inches)\b(?=\s*(?:x|×|by)\s*\d)/g, "")
    .replaceAll(/(?<=\d)\s*(?:x|×|\*|\bby\b)\s*(?=\d)/g, "x");

const tokens = (words: string): readonly string[] =>
  plain(words)
    .split(/[^\p{L}\p{N}/.]+/u)
    .map((word) => word.replaceAll(/^[./]+|[./]+$/g, ""))
    .filter((word) => word !== "");

const key = (words: string): string => tokens(words).join(" ");

/** What a row's words mean among the known items. Only words that are all understood name an item. */
export function guessItem(words: string, known: readonly KnownItem[]): ItemGuess {
  const mine = key(words);
  const same = known.filter((k) => [k.item, ...k.names].some((name) => key(name) === mine));
  const exact = known.find((k) => k.item === words.trim()) ?? (same.length === 1 ? same[0] : undefined);
  if (exact) return { item: exact.item, perhaps: null, unheeded: [], strange: [] };
  return mine === "" ? nothing : (guessLumber(words, known) ?? guessCounted(words, known));
}

const nothing: ItemGuess = { item: null, perhaps: null, unheeded: [], strange: [] };

/** A board by its size: recognised when every other word is one that yards say of boards. */
function guessLumber(words: string, known: readonly KnownItem[]): ItemGuess | null {
  const all = tokens(words);
  const sizeOf = (word: string): string => SIZE_AND_LENGTH.exec(word)?.[1] ?? word;
  const sizes = [...new Set(all.map(sizeOf).filter((word) => SIZE.test(word)))];
  const item = known.find((k) => k.is_lumber && key(k.item) === sizes[0]);
  if (sizes.length !== 1 || !item) return null;
  const others = [...new Set(all.filter((word) => word !== sizes[0]))];
  const unheeded = others.filter((word) => BOARD_WORDS.has(word));
  const strange = others.filter((word) => !BOARD_WORDS.has(word) && !isEmpty(word));
  return strange.length === 0
    ? { item: item.item, perhaps: null, unheeded, strange }
    : { item: null, perhaps: item.item, unheeded, strange };
}

const isEmpty = (word: string): boolean =>
  EMPTY_WORDS.has(word) || /^\d+(?:\.\d+)?(?:ft|mm|cm|m|in)?$/.test(word);

/** Anything else: perhaps the one item all of whose id stands among the words, the longest id first. */
function guessCounted(words: string, known: readonly KnownItem[]): ItemGuess {
  const all = new Set(tokens(words));
  const fitting = known
    .filter((k) => !k.is_lumber)
    .map((k) => ({ item: k.item, parts: tokens(k.item) }))
    .filter(({ parts }) => parts.length > 1 && parts.every((part) => all.has(part)))
    .toSorted((a, b) => b.parts.length - a.parts.length);
  const [best, next] = fitting;
  if (!best || best.parts.length === next?.parts.length) return nothing;
  const strange = [...all].filter((word) => !best.parts.includes(word));
  return { item: null, perhaps: best.item, unheeded: [], strange };
}
