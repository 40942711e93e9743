import type { LevelRole } from "@causey/engine/water";
import { linePicture } from "../drawings/index.ts";
import { levelText, partLength, shower } from "../drawings/show.ts";
import type { Box, Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Sheet } from "../set/sheet.ts";
import { flow, flowHeight, type Block } from "../text/index.ts";
import { checkBlocks, moneyBlocks } from "./summary-money.ts";

/** The summary stays one page: in the largest type that leaves room for the picture, smaller ones without it [mm]. */
const SIZES = [3, 2.8, 2.6, 2.4, 2.2, 2, 1.8, 1.6];
/** Between the two columns, and over the picture [mm]. */
const GUTTER = 8;
const OVER_PICTURE = 4;
/** Height of the picture of the line [mm]. */
const PICTURE = { least: 45, most: 105 };
/** Smaller type than this is not taken to make room for the picture [mm]. */
const LEAST_WITH_PICTURE = 2.2;
/** Cautions beyond these stand on the sheet of checks. */
const MOST_CAUTIONS = 8;

/** The one page for the director: what it is, what it costs, what it touches, when it comes out. */
export const summarySheet: Sheet = {
  id: "summary",
  title: "Summary",
  about:
    "One page: length, width, height over ground, shade and contact, money with its range, dates, cautions, a picture of the line.",
  drafts: (context) => [
    {
      title: "Summary",
      orientation: "portrait",
      scale: "not to scale",
      draw: (space) => summaryShapes(context, space),
    },
  ],
};

interface Parts {
  readonly head: readonly Block[];
  readonly left: readonly Block[];
  readonly right: readonly Block[];
  readonly foot: readonly Block[];
}

/** Name and purpose over the whole width, walkway and harm beside money and checks, cautions below, then the line. */
function summaryShapes(context: PaperContext, space: Box): Shape[] {
  const parts: Parts = {
    head: headBlocks(context),
    left: [...walkwayBlocks(context), ...harmBlocks(context)],
    right: [...moneyBlocks(context), ...checkBlocks(context)],
    foot: [...levelBlocks(context), ...cautionBlocks(context)],
  };
  const column = (space.width - GUTTER) / 2;
  const heights = (size: number) => {
    const head = flowHeight(parts.head, space.width, size);
    const middle = Math.max(flowHeight(parts.left, column, size), flowHeight(parts.right, column, size));
    return { head, middle, foot: flowHeight(parts.foot, space.width, size) };
  };
  const leftOver = (size: number): number => {
    const { head, middle, foot } = heights(size);
    return space.height - head - middle - foot;
  };
  const size =
    SIZES.find((s) => s >= LEAST_WITH_PICTURE && leftOver(s) >= PICTURE.least + OVER_PICTURE) ??
    SIZES.find((s) => leftOver(s) >= 0) ??
    SIZES.at(-1)!;
  const { head, middle, foot } = heights(size);
  const lay = (blocks: readonly Block[], x: number, y: number, width: number, height: number): Shape[] =>
    flow(blocks, { x, y, width, height: height + 0.01 }, size).flat();
  const below = space.y + head + middle;
  const picture = Math.min(PICTURE.most, leftOver(size) - OVER_PICTURE);
  return [
    ...lay(parts.head, space.x, space.y, space.width, head),
    ...lay(parts.left, space.x, space.y + head, column, middle),
    ...lay(parts.right, space.x + column + GUTTER, space.y + head, column, middle),
    ...lay(parts.foot, space.x, below, space.width, foot),
    ...(picture >= PICTURE.least
      ? linePicture(context, { ...space, y: below + foot + OVER_PICTURE, height: picture })
      : []),
  ];
}

const headBlocks = ({ plan }: PaperContext): Block[] => [
  { kind: "head", text: `${plan.name}, ${plan.site_name}` },
  ...(plan.request.purpose ? [{ kind: "text", text: plan.request.purpose } as const] : []),
  {
    kind: "text",
    quiet: true,
    text: "A module is one length of deck that people carry and lay; its ends rest on supports, at the joints.",
  },
];

/** The water's levels in one paragraph, with what each mean is, for readers who do not live with tides. */
function levelBlocks({ plan }: PaperContext): Block[] {
  if (plan.levels.length === 0) return [];
  const levels = plan.levels.map((l) => `${levelName(l.name, l.role)} ${levelText(l.z_m, plan)}`);
  const datums = [...new Set(plan.levels.map((l) => l.datum))].join(", ");
  return [{ kind: "text", text: `Water levels on ${datums}: ${levels.join("; ")}.` }];
}

/** The first cautions of the results: those found in this plan lead. */
const cautionBlocks = ({ results }: PaperContext): Block[] => [
  { kind: "head", text: "Cautions" },
  ...results.cautions.slice(0, MOST_CAUTIONS).map((text): Block => ({ kind: "text", text, bullet: true })),
];

function walkwayBlocks({ plan, results }: PaperContext): Block[] {
  const { evaluation: e, layout } = results;
  const show = shower(plan);
  const visits = plan.visits.map((v) => `${v.name}, ${Number(v.per_year.toFixed(1))} a year`).join("; ");
  return [
    { kind: "head", text: "The walkway" },
    {
      kind: "rows",
      rows: [
        ["Length of walkway", show(e.length_m, "m")],
        ["Width of deck", partLength(plan.kit.deck.width_mm / 1000, plan)],
        ["Height of the underside over ground, at the lowest point", show(e.lowest_deck_clear_m, "m")],
        [
          "Parts",
          `${e.modules.map((m) => `${m.count} modules of ${partLength(m.length_m, plan)}`).join(", ")}; ${e.platforms} platforms; ${e.joints} supports`,
        ],
        ["Laid", `${plan.laying.from} to ${plan.laying.to}`],
        ["Taken out by", plan.removal.by],
        ["Visits", visits || "none told yet"],
        ...layout.reached.map(
          (r) =>
            [
              `Reaches ${plan.plots.find((p) => p.id === r.plot)?.name ?? r.plot}`,
              `${show(r.walk_m, "m")} from the start`,
            ] as const,
        ),
        ...layout.unreached.map(
          (u) =>
            [`Does not reach ${plan.plots.find((p) => p.id === u.plot)?.name ?? u.plot}`, u.because] as const,
        ),
      ],
    },
  ];
}

function harmBlocks({ plan, results }: PaperContext): Block[] {
  const { evaluation: e } = results;
  const show = shower(plan);
  const shaded = e.shaded_by_zone.filter((z) => z.area_m2 > 0.005);
  const rest = e.shaded_m2 - shaded.reduce((sum, z) => sum + z.area_m2, 0);
  return [
    { kind: "head", text: "Harm and water" },
    {
      kind: "rows",
      rows: [
        ["Shaded ground", show(e.shaded_m2, "m2")],
        ...shaded.map(
          (z) =>
            [
              `of it ${/\p{L}{2}/u.test(z.name) ? z.name : `habitat ${z.name}`}`,
              show(z.area_m2, "m2"),
            ] as const,
        ),
        ...(rest > 0.05 ? [["of it plain ground, in no habitat named here", show(rest, "m2")] as const] : []),
        ["Ground touched by supports", show(e.contact_m2, "m2")],
        [
          "Crossings of channels and pools",
          e.crossings.length === 0
            ? "none"
            : e.crossings.map((c) => `${c.name}, ${show(c.clear_m, "m")} clear`).join("; "),
        ],
      ],
    },
  ];
}

/** What the means of a tide are. */
const ROLES: Partial<Record<LevelRole, string>> = {
  mhw: "the mean of all high tides",
  mhhw: "the mean of each day's higher high tide",
  mhws: "the mean of spring high tides",
  mlw: "the mean of all low tides",
  mllw: "the mean of each day's lower low tide",
};

const levelName = (name: string, role: LevelRole): string => {
  const words = ROLES[role];
  return words === undefined ? name : `${name} (${words})`;
};
