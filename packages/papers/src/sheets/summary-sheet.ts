import { FIRST_CAUTION, STANDING_CAUTIONS } from "@causey/engine/plan";
import { linePicture } from "../drawings/index.ts";
import type { Box, Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Sheet } from "../set/sheet.ts";
import { flow, flowHeight, type Block } from "../text/index.ts";
import { checkBlocks } from "./summary-checks.ts";
import { moneyBlocks } from "./summary-money.ts";
import { harmBlocks, visitRows, walkwayBlocks } from "./summary-walkway.ts";
import { waterBlocks } from "./summary-water.ts";

/** The summary stays one page: in the largest type that leaves room for the picture, smaller ones without it [mm]. */
const SIZES = [3, 2.8, 2.6, 2.4, 2.2, 2.1, 2, 1.8, 1.6];
/** Between the two columns, and over the picture [mm]. */
const GUTTER = 8;
const OVER_PICTURE = 4;
/** Height of the picture of the line [mm]. */
const PICTURE = { least: 42, most: 105 };
/** Smaller type than this is not taken to make room for the picture [mm]. */
const LEAST_WITH_PICTURE = 2.1;
/** Cautions found in this plan; those beyond stand on the check summary. */
const MOST_CAUTIONS = 8;

/** The one page for the director: what it is, what it costs, what it touches, when it comes out. */
export const summarySheet: Sheet = {
  id: "summary",
  title: "Summary",
  about:
    "One page: length, width, heights over ground, visits, shade and contact, money with its range, what fails or is open, water, cautions, a picture of the line.",
  drafts: (context, room) => [
    {
      title: "Summary",
      orientation: "portrait",
      scale: pageOf(context, room.portrait).scale,
      draw: (space) => pageOf(context, space).shapes,
    },
  ],
};

interface Page {
  readonly scale: string;
  readonly shapes: readonly Shape[];
}

interface Parts {
  readonly head: readonly Block[];
  readonly left: readonly Block[];
  readonly right: readonly Block[];
  readonly foot: readonly Block[];
}

/**
 * Name, purpose and visits over the whole width; walkway and harm beside money; water and cautions below. The checks
 * stand under the money or over the whole width: two ways to lay one page, and the lower one is taken.
 */
function waysToLay(context: PaperContext): readonly [Parts, Parts] {
  const head = headBlocks(context);
  const left = [...walkwayBlocks(context), ...harmBlocks(context)];
  const money = moneyBlocks(context);
  const checks = checkBlocks(context);
  const rest = [...waterBlocks(context), ...cautionBlocks(context)];
  return [
    { head, left, right: [...money, ...checks], foot: rest },
    { head, left, right: money, foot: [...checks, ...rest] },
  ];
}

interface Laid {
  readonly parts: Parts;
  readonly size: number;
  readonly head: number;
  readonly middle: number;
  readonly foot: number;
  /** Height that is left under the words [mm]. */
  readonly left: number;
}

/** The lower way in one size of type. */
function laidIn(ways: readonly [Parts, Parts], size: number, space: Box): Laid {
  const column = (space.width - GUTTER) / 2;
  const [first, second] = ways.map((parts): Laid => {
    const head = flowHeight(parts.head, space.width, size);
    const middle = Math.max(flowHeight(parts.left, column, size), flowHeight(parts.right, column, size));
    const foot = flowHeight(parts.foot, space.width, size);
    return { parts, size, head, middle, foot, left: space.height - head - middle - foot };
  }) as [Laid, Laid];
  return second.left > first.left ? second : first;
}

function pageOf(context: PaperContext, space: Box): Page {
  const ways = waysToLay(context);
  const sizes = SIZES.map((size) => laidIn(ways, size, space));
  const laid =
    sizes.find((s) => s.size >= LEAST_WITH_PICTURE && s.left >= PICTURE.least + OVER_PICTURE) ??
    sizes.find((s) => s.left >= 0) ??
    sizes.at(-1)!;
  const { parts, head, middle, foot } = laid;
  const lay = (blocks: readonly Block[], x: number, y: number, width: number, height: number): Shape[] =>
    flow(blocks, { x, y, width, height: height + 0.01 }, laid.size).flat();
  const column = (space.width - GUTTER) / 2;
  const below = space.y + head + middle;
  const room = Math.min(PICTURE.most, laid.left - OVER_PICTURE);
  const picture =
    room >= PICTURE.least
      ? linePicture(context, { ...space, y: below + foot + OVER_PICTURE, height: room })
      : null;
  return {
    scale: picture?.scale ?? "not to scale",
    shapes: [
      ...lay(parts.head, space.x, space.y, space.width, head),
      ...lay(parts.left, space.x, space.y + head, column, middle),
      ...lay(parts.right, space.x + column + GUTTER, space.y + head, column, middle),
      ...lay(parts.foot, space.x, below, space.width, foot),
      ...(picture?.shapes ?? []),
    ],
  };
}

const headBlocks = (context: PaperContext): Block[] => [
  { kind: "head", text: `${context.plan.name}, ${context.plan.site_name}` },
  ...(context.plan.request.purpose ? [{ kind: "text", text: context.plan.request.purpose } as const] : []),
  {
    kind: "text",
    quiet: true,
    text: "A module is one length of deck that people carry and lay; its ends rest on supports, at the joints.",
  },
  { kind: "rows", rows: visitRows(context) },
];

/**
 * The cautions found in this plan, then those true of every walkway in one line, and where they stand in full. The
 * first of all, whose word counts, stands in the title block.
 */
function cautionBlocks({ results }: PaperContext): Block[] {
  const short = new Map(STANDING_CAUTIONS.map((c) => [c.text, c.short]));
  const found = results.cautions.filter((text) => !short.has(text) && text !== FIRST_CAUTION);
  const standing = results.cautions.flatMap((text) => short.get(text) ?? []);
  const more = found.length - MOST_CAUTIONS;
  const always = standing.length > 0 ? `Always: ${standing.join("; ")}. ` : "";
  const counted = more > 0 ? `${more} more, and every` : "Every";
  return [
    { kind: "head", text: "Cautions" },
    ...found.slice(0, MOST_CAUTIONS).map((text): Block => ({ kind: "text", text, bullet: true })),
    {
      kind: "text",
      bullet: true,
      text: `${always}${counted} caution in full: on the check summary sheet.`,
    },
  ];
}
