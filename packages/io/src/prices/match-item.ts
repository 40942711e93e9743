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

interface Index {
  readonly byId: ReadonlyMap<string, string>;
  /** Items by their words made plain; two items of the same words name neither. */
  readonly byWords: ReadonlyMap<string, ReadonlySet<string>>;
  readonly lumber: ReadonlyMap<string, string>;
  readonly counted: readonly { readonly item: string; readonly parts: readonly string[] }[];
}

function indexOf(known: readonly KnownItem[]): Index {
  const byWords = new Map<string, Set<string>>();
  for (const { item, names } of known)
    for (const words of [item, ...names].map(key))
      byWords.set(words, (byWords.get(words) ?? new Set()).add(item));
  return {
    byId: new Map(known.map(({ item }) => [item, item])),
    byWords,
    lumber: new Map(known.filter((k) => k.is_lumber).map(({ item }) => [key(item), item])),
    counted: known.filter((k) => !k.is_lumber).map(({ item }) => ({ item, parts: tokens(item) })),
  };
}

/**
 * Says what a row's words mean among the known items. An item is named by its id, by words under which the list knows
 * it, or by its size where every other word is understood; else it is at most "perhaps" it.
 */
export function itemGuesser(known: readonly KnownItem[]): (words: string) => ItemGuess {
  const index = indexOf(known);
  return (words) => {
    const all = tokens(words);
    if (all.length === 0) return nothing;
    const named = index.byWords.get(all.join(" "));
    const exact = index.byId.get(words.trim()) ?? (named?.size === 1 ? [...named][0]! : null);
    const board = guessBoard(all, index);
    if (exact === null) return board ?? guessCounted(all, index);
    const unheeded = (board?.item ?? board?.perhaps) === exact ? board!.unheeded : [];
    return { item: exact, perhaps: null, unheeded, strange: [] };
  };
}

const nothing: ItemGuess = { item: null, perhaps: null, unheeded: [], strange: [] };

/** A board by its size: recognised when every other word is one that yards say of boards. */
function guessBoard(all: readonly string[], { lumber }: Index): ItemGuess | null {
  const sizeOf = (word: string): string => SIZE_AND_LENGTH.exec(word)?.[1] ?? word;
  const sizes = [...new Set(all.map(sizeOf).filter((word) => SIZE.test(word)))];
  const item = lumber.get(sizes[0] ?? "");
  if (sizes.length !== 1 || item === undefined) return null;
  const others = [...new Set(all.filter((word) => word !== sizes[0]))];
  const unheeded = others.filter((word) => BOARD_WORDS.has(word));
  const strange = others.filter((word) => !BOARD_WORDS.has(word) && !isEmpty(word));
  return strange.length === 0
    ? { item, perhaps: null, unheeded, strange }
    : { item: null, perhaps: item, unheeded, strange };
}

const isEmpty = (word: string): boolean =>
  EMPTY_WORDS.has(word) || /^\d+(?:\.\d+)?(?:ft|mm|cm|m|in)?$/.test(word);

/** Anything else: perhaps the one item all of whose id stands among the words, the longest id first. */
function guessCounted(words: readonly string[], { counted }: Index): ItemGuess {
  const all = new Set(words);
  const fitting = counted
    .filter(({ parts }) => parts.length > 1 && parts.every((part) => all.has(part)))
    .toSorted((a, b) => b.parts.length - a.parts.length);
  const [best, next] = fitting;
  if (!best || best.parts.length === next?.parts.length) return nothing;
  const strange = [...all].filter((word) => !best.parts.includes(word));
  return { item: null, perhaps: best.item, unheeded: [], strange };
}
