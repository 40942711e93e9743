import { designCode } from "@causey/engine/codes";
import type { Plan, Results } from "@causey/engine/plan";
import { showQuantity } from "@causey/engine/units";
import { shower } from "../drawings/show.ts";
import type { PaperContext } from "../set/context.ts";
import type { Block } from "../text/index.ts";
import { memory, partWords, sourceWords } from "./working-blocks.ts";

const bullet = (text: string): Block => ({ kind: "text", bullet: true, text });

/** What the checks take for granted: code and edition, timber, moisture, ground, rules, and whose word each needs. */
export function assumptionBlocks({ plan, results, tables }: PaperContext): Block[] {
  const { lumber } = plan.kit;
  const { ground, rules } = plan;
  const profile = tables.rule_profiles.find((p) => p.id === rules.profile);
  return [
    { kind: "head", text: "What is assumed" },
    {
      kind: "rows",
      rows: [
        ["Design code and edition", codeWords(plan)],
        ["Timber, assumed until the grade stamps are seen", `${lumber.species}, ${lumber.grade}`],
        ["Treatment", treatmentWords(plan)],
        ["Moisture", "wet service throughout: the timber is never taken as dry"],
        ["Own weight, water and lifting", "by the masses of the parts; soaked where that is worse"],
        ["Ground strength where no reading is near", strengthWords(plan)],
        ["Strength readings", `${ground.readings.length} in the plan`],
        ["Safety asked of the ground", `${Number(ground.safety.toFixed(2))} times the pressure`],
        [
          "Rule profile",
          profile ? `${profile.name}: ${profile.where}` : `${rules.profile}, not in the tables`,
        ],
        [
          "Modules as structures",
          "stringers on two ends; cross pieces taken as hinged and as stiff, the worse counts",
        ],
      ],
    },
    ...rules.overrides.map((o) =>
      bullet(`The project's own value ${o.value} for ${o.rule}: ${o.reason} (${o.by}, ${o.date}).`),
    ),
    { kind: "head", text: "Who must confirm what" },
    ...confirmBlocks(results),
  ];
}

const codeWords = ({ code }: Plan): string => {
  const found = designCode(code);
  return found.ok ? found.value.title : `${code}, not in the tables`;
};

const treatmentWords = ({ kit: { lumber } }: Plan): string =>
  lumber.treatment === "none"
    ? "untreated"
    : `treated${lumber.preservative === null ? ", preservative not told" : `, ${lumber.preservative}`}${lumber.incised ? ", incised" : ""}`;

const strengthWords = ({ ground }: Plan): string =>
  ground.su_kpa === null
    ? "not told: joints without a reading cannot be checked"
    : `${ground.su_kpa} kPa undrained; ${ground.source.trim() || "source not told"}`;

const confirmBlocks = ({ engineer }: Results): Block[] => [
  bullet("Whoever buys the timber: species and grade, by the stamps on the pieces."),
  bullet("Whoever surveys: the strength of the ground at each joint, measured before anything is laid."),
  bullet("The permit officer: every statement on levels, closures and what the law asks."),
  ...(engineer.length === 0
    ? [bullet("A licensed engineer: nothing passed a limit of the rules; whoever doubts a figure asks one.")]
    : engineer.map((flag) =>
        bullet(
          `A licensed engineer: ${flag.title}, ${flag.because} (${partWords(flag.parts)}). ${sourceWords(flag.source)}.`,
        ),
      )),
];

/** Who and what walks over the deck, and the loads that rules ask for besides. */
export function loadBlocks(context: PaperContext): Block[] {
  const { plan } = context;
  const show = shower(plan);
  const carts = plan.visits.flatMap(({ name, cart }) => (cart ? [{ name, cart }] : []));
  return [
    { kind: "head", text: "Loads" },
    plan.visits.length === 0
      ? bullet("No visit is told: only the loads of the rules are counted.")
      : {
          kind: "table",
          columns: [
            { head: "Visit", share: 3.4 },
            { head: "People", share: 1, align: "end" },
            { head: "Each", share: 1.3, align: "end" },
            { head: "Apart", share: 1.5, align: "end" },
            { head: "Times a year", share: 1.4, align: "end" },
            { head: "From, to", share: 2.8 },
          ],
          rows: plan.visits.map((v) => [
            v.name,
            String(v.people),
            show(v.person_kg, "kg"),
            show(v.spacing_mm / 1000, "m"),
            String(Number(v.per_year.toFixed(1))),
            `${v.from} to ${v.to ?? "no last day told"}`,
          ]),
        },
    ...(carts.length === 0
      ? [bullet("No cart is asked for.")]
      : [
          {
            kind: "table",
            columns: [
              { head: "Cart", share: 2.4 },
              { head: "Empty", share: 1.2, align: "end" },
              { head: "Load", share: 1.2, align: "end" },
              { head: "Mud and water", share: 1.6, align: "end" },
              { head: "Axles", share: 0.9, align: "end" },
              { head: "Track", share: 1.4, align: "end" },
              { head: "On the visit", share: 3 },
            ],
            rows: carts.map(({ name, cart }) => [
              cart.name,
              show(cart.empty_kg, "kg"),
              show(cart.load_kg, "kg"),
              show(cart.wet_kg, "kg"),
              String(cart.axles),
              show(cart.track_mm / 1000, "m"),
              name,
            ]),
          } as const,
        ]),
    ...ruleLoads(context),
  ];
}

/** Loads that a rule asks for: as the plan chose them, and the single one that stands in the workings. */
function ruleLoads({ plan, results }: PaperContext): Block[] {
  const steps = results.checks.flatMap((c) => (c.status === "pass" || c.status === "fail" ? c.working : []));
  const single = steps.find((s) => s.id === "check.point-load");
  const chosen = plan.proof.load_rules;
  return [
    ...(single
      ? [
          bullet(
            `${single.title}: ${showQuantity(single.value, single.unit, plan.units)}${memory(single.source)}. ${single.source.title}${single.source.at ? `, ${single.source.at}` : ""}.`,
          ),
        ]
      : []),
    bullet(
      chosen.length === 0
        ? "No further load rule was chosen: what a public crowd asks is not counted."
        : `Load rules chosen besides the visits: ${chosen.join(", ")}.`,
    ),
  ];
}
