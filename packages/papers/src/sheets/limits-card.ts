import { fullMass, type CheckResult } from "@causey/engine/checks";
import type { Box, Shape } from "../scene/index.ts";
import { shower } from "../drawings/show.ts";
import type { PaperContext } from "../set/context.ts";
import type { Sheet } from "../set/sheet.ts";
import { flow, flowHeight, type Block } from "../text/index.ts";
import { byKind, type Judged } from "./calculation-results.ts";
import { proofBlocks } from "./proof-load.ts";

/** The largest type that keeps the card on one page is taken [mm]. */
const SIZES = [4.4, 4.2, 4, 3.8, 3.6, 3.4, 3.2, 3, 2.8, 2.6, 2.4, 2.2, 2];
const GUTTER = 9;
/** What stands where the results hold no such figure. */
const ASK = "not worked out yet: ask";

/** One page for the box in the field: what may stand on the walkway, how it is proven, and what no number catches. */
export const limitsCard: Sheet = {
  id: "limits-card",
  title: "Limits of use",
  about: "How many persons and what cart a module carries, the proof load, and what to look for.",
  drafts: (context) => [
    {
      title: "Limits of use",
      orientation: "portrait",
      scale: "not to scale",
      draw: (box) => cardShapes(context, box),
    },
  ],
};

function cardShapes(context: PaperContext, box: Box): Shape[] {
  const width = (box.width - GUTTER) / 2;
  const columns = [
    [...limitBlocks(context), ...proofBlocks(context)],
    [...watchBlocks(), ...closingBlocks(context)],
  ] as const;
  const size =
    SIZES.find((s) => columns.every((c) => flowHeight(c, width, s) <= box.height)) ?? SIZES.at(-1)!;
  return columns.flatMap(
    (blocks, i) => flow(blocks, { ...box, x: box.x + i * (width + GUTTER), width }, size)[0]!,
  );
}

const line = (text: string): Block => ({ kind: "text", bullet: true, text });

/** Parts that a limit is given for, with the kinds of check that know it. */
const PARTS: readonly {
  readonly title: string;
  readonly kinds: readonly CheckResult["kind"][];
  readonly id?: RegExp;
}[] = [
  { title: "Module", kinds: ["stringer-bending", "stringer-shear", "stringer-deflection"] },
  { title: "Deck", kinds: ["deck"] },
  { title: "Platform", kinds: ["platform"], id: /^platform\.stringer/ },
  { title: "Ground under the supports", kinds: ["bearing"] },
];

/** What each part does carry, by the check nearest to its limit, in the words of the results. */
export function limitBlocks({ plan, results }: PaperContext): Block[] {
  const judged = byKind(results.checks).flat();
  const show = shower(plan);
  const carts = [
    ...new Map(plan.visits.flatMap((v) => (v.cart ? [[v.cart.name, v.cart] as const] : []))).values(),
  ];
  const heaviest = carts.toSorted((a, b) => fullMass(b) - fullMass(a))[0];
  return [
    { kind: "head", text: "At most at once" },
    { kind: "text", text: "Every line holds: the least of them is the limit." },
    ...PARTS.map(({ title, kinds, id }) => {
      const governing = judged
        .filter((c) => kinds.includes(c.kind) && (id?.test(c.id) ?? true))
        .reduce<Judged | null>((most, c) => (most && most.utilisation >= c.utilisation ? most : c), null);
      return line(`${title}: ${governing === null ? `${ASK}.` : limitWords(governing)}`);
    }),
    line(
      heaviest === undefined
        ? `Loaded cart: no cart was asked for; ${ASK}.`
        : `Loaded cart: ${heaviest.name}, checked at ${show(fullMass(heaviest), "kg")} with its load, mud and water. Heavier: ask.`,
    ),
    line("Walk in file, as far apart as told. No running, jumping or crowding, no stacks of parts."),
  ];
}

const limitWords = ({ status, backwards }: Judged): string =>
  `${status === "fail" ? "does not meet what was asked. " : ""}${backwards.carries || `${ASK}.`}`;

/** What a round looks for that no check holds. */
const watchBlocks = (): Block[] => [
  { kind: "head", text: "What no number catches" },
  { kind: "text", text: "Look for it on every round." },
  ...[
    "Rot in end grain: push a knife into the ends of stringers and posts.",
    "Algae and wet leaves: boards slippery under a boot; scrub or close.",
    "Cut ends of mesh, wires that stand up, splinters.",
    "Boards lifted, split or loose; clips and screws loose or gone.",
    "A seat that slipped, a support that leans or sinks, scour at its foot.",
    "Animals trapped under or between parts: free them, note where, tell the warden.",
    "Predators that use the deck as a road or a perch: tracks, droppings, feathers.",
    "Wrack lodged on the line or lying on plants: lift it off by hand.",
    "Biosecurity: wash boots, wheels and tools, check for seeds and eggs, let them dry before the next site.",
    "Tags of the owner and of the parts: there, and legible.",
    "Public and dogs: signs that they come; sign and chain still in place.",
  ].map(line),
];

function closingBlocks({ plan, results }: PaperContext): Block[] {
  const show = shower(plan);
  const closes = results.proof.flood?.closes_at;
  return [
    { kind: "head", text: "Close it" },
    ...(closes
      ? [
          line(
            `When water reaches ${show(closes.z_m, "m")} on ${results.datum}, or runs faster than ${show(closes.speed_m_s, "m/s")}.`,
          ),
        ]
      : []),
    line(
      "When water stands over the deck, after ice, flood or storm until it was walked and looked at, and when anything above is found.",
    ),
    line("Thunder, fog or rising tide: go back. Nobody works alone. Cold water kills quickly."),
    { kind: "blank", label: "Proven on, by:", lines: 1 },
    { kind: "blank", label: "Whom to call:", lines: 1 },
    { kind: "space", height: 3 },
    {
      kind: "text",
      quiet: true,
      text: `${plan.name}, ${plan.site_name}. ${results.cautions[0] ?? ""} Figures meet the chosen rules for the visits asked; staff only.`,
    },
  ];
}
