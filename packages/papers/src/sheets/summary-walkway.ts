import { timberRow } from "@causey/engine/materials";
import { highestDeck, type Plan } from "@causey/engine/plan";
import { levelText, partLength, shower } from "../drawings/show.ts";
import type { PaperContext } from "../set/context.ts";
import { noCrossingWords } from "../summary/index.ts";
import type { Block } from "../text/index.ts";

type Row = readonly [label: string, value: string];

/** Rows of a kind beyond these are only counted. */
const MOST_VISITS = 3;
const MOST_PLOTS = 8;

/** Who goes, with what, how often, and from when to when: one row a visit. */
export function visitRows({ plan }: PaperContext): Row[] {
  if (plan.visits.length === 0) return [["Visits", "none told yet"]];
  const more = plan.visits.length - MOST_VISITS;
  return [
    ...plan.visits.slice(0, MOST_VISITS).map((v): Row => [`Visit: ${v.name}`, visitWords(v)]),
    ...(more > 0 ? [["Visits", `and ${more} more`] as const] : []),
  ];
}

function visitWords({ people, cart, per_year, from, to }: Plan["visits"][number]): string {
  const who = `${people} ${people === 1 ? "person" : "people"}, ${cart === null ? "no cart" : `cart "${cart.name}"`}`;
  return `${who}; ${Number(per_year.toFixed(1))} a year, ${from} to ${to ?? "no last day told"}`;
}

export function walkwayBlocks(context: PaperContext): Block[] {
  const { plan, results } = context;
  const { evaluation: e } = results;
  const show = shower(plan);
  return [
    { kind: "head", text: "The walkway" },
    {
      kind: "rows",
      rows: [
        ["Length of walkway", show(e.length_m, "m")],
        ["Deck", deckWords(plan)],
        ...heightRows(context),
        ["Parts", partsWords(context)],
        ...liftRow(context),
        ["Timber", timberWords(context)],
        ["Laid", `${plan.laying.from} to ${plan.laying.to}; out by ${plan.removal.by}`],
        ...plotRows(context),
      ],
    },
  ];
}

function partsWords({ plan, results: { evaluation: e } }: PaperContext): string {
  const count = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;
  const modules = e.modules.map((m) => `${count(m.count, "module")} of ${partLength(m.length_m, plan)}`);
  return [modules.join(", ") || "no module", count(e.platforms, "platform"), count(e.joints, "support")].join(
    "; ",
  );
}

/** The heaviest part that is laid, as it comes out of the mud, and how many carry it: they must be found. */
function liftRow({ plan, results: { kit, evaluation } }: PaperContext): Row[] {
  const laid = (mm: number): boolean => evaluation.modules.some((m) => Math.abs(m.length_m * 1000 - mm) < 1);
  const platforms = kit.halves.length > 0 ? kit.halves : [kit.platform];
  const masses = [
    ...kit.modules.filter((m) => laid(m.length_mm)),
    ...(evaluation.platforms > 0 ? platforms : []),
  ].map((part) => part.mass_soaked.value);
  if (masses.length === 0) return [];
  const known = masses.filter((mass) => mass !== null);
  const mass =
    known.length < masses.length ? "not known" : `${shower(plan)(Math.max(...known), "kg")} soaked`;
  const { carriers } = plan.laying;
  return [["Heaviest part to carry", `${mass}, by ${carriers} ${carriers === 1 ? "person" : "people"}`]];
}

/** Both ends of the height over ground: the least matters to plants, the greatest to who falls. */
function heightRows({ plan, results }: PaperContext): Row[] {
  const { layout, evaluation } = results;
  const highest = highestDeck(layout.joints);
  if (highest === null) return [["Height over ground", "no walkway is laid"]];
  const show = shower(plan);
  return [
    ["Least height of the underside over ground", show(evaluation.lowest_deck_clear_m, "m")],
    ["Greatest height of the deck over ground", `${show(highest.height_m, "m")}, at joint ${highest.joint}`],
  ];
}

function timberWords({ plan, tables }: PaperContext): string {
  const { species, grade, treatment, preservative } = plan.kit.lumber;
  const name = timberRow(tables, species, grade)?.name ?? `${species}, ${grade}`;
  if (treatment === "none") return `${name}, untreated`;
  const what = tables.preservatives.find((p) => p.id === preservative)?.name ?? preservative;
  return `${name}, treated${what === null ? ", with what is not told" : ` with ${what}`}`;
}

function deckWords(plan: Plan): string {
  const { deck } = plan.kit;
  const wide = `${partLength(deck.width_mm / 1000, plan)} wide`;
  return deck.kind === "boards"
    ? `${wide}, boards ${deck.size}, ${partLength(deck.gap_mm / 1000, plan)} apart`
    : `${wide}, ${deck.name}`;
}

/** Where the walkway leads and how far short of each plot it ends; what it does not reach comes first. */
function plotRows({ plan, results: { layout } }: PaperContext): Row[] {
  const show = shower(plan);
  const nameOf = (id: string): string => plan.plots.find((p) => p.id === id)?.name ?? id;
  const rows = [
    ...layout.unreached.map((u): Row => [`Does not reach ${nameOf(u.plot)}`, u.because]),
    ...layout.reached.map((r): Row => [
      `Reaches ${nameOf(r.plot)}`,
      `${show(r.walk_m, "m")} along the walkway, ends ${levelText(r.distance_m, plan)} from it`,
    ]),
  ];
  const more = rows.length - MOST_PLOTS;
  return more > 0 ? [...rows.slice(0, MOST_PLOTS), ["Plots", `and ${more} more`]] : rows;
}

export function harmBlocks({ plan, results }: PaperContext): Block[] {
  const { evaluation: e } = results;
  const show = shower(plan);
  const crossings = e.crossings.map((c) => `${c.name}, ${show(c.clear_m, "m")} clear`).join("; ");
  return [
    { kind: "head", text: "Harm" },
    {
      kind: "rows",
      rows: [
        ["Shaded ground", show(e.shaded_m2, "m2")],
        ...shadedRows(e, show),
        ["Ground touched by supports", show(e.contact_m2, "m2")],
        ["Crossings of channels and pools", crossings || noCrossingWords(plan)],
      ],
    },
  ];
}

/** What is shaded in each habitat, and what lies in none: the parts of one sum, in one row. */
function shadedRows(
  { shaded_m2, shaded_by_zone }: PaperContext["results"]["evaluation"],
  show: ReturnType<typeof shower>,
): Row[] {
  const shaded = shaded_by_zone.filter((z) => z.area_m2 > 0.005);
  if (shaded.length === 0) return [];
  const rest = shaded_m2 - shaded.reduce((sum, z) => sum + z.area_m2, 0);
  const parts = [
    ...shaded.map(
      (z) => `${/\p{L}{2}/u.test(z.name) ? z.name : `habitat ${z.name}`} ${show(z.area_m2, "m2")}`,
    ),
    ...(rest > 0.05 ? [`plain ground, in no habitat named here, ${show(rest, "m2")}`] : []),
  ];
  return [["of it", parts.join("; ")]];
}
