import { recordValue, type Source, type Trace } from "../formula/index.ts";
import { fastenersOf } from "../kit/index.ts";
import type { Fastener, Preservative } from "../materials/index.ts";
import { qty } from "../units/index.ts";
import { shareResults, type Finding } from "./rule-results.ts";
import type { RuleBase, RuleSetting } from "./rule-setting.ts";
import type { CheckResult } from "./types.ts";

const FEMA: Source = {
  id: "fema-p-499",
  title: "FEMA P-499, Home Builder's Guide to Coastal Construction, fact sheets",
  at: "copper treatments: hot-dip zinc, stainless, silicon bronze or copper; corrosion much faster by the sea",
  status: "seen",
};
const STAINLESS: Source = {
  id: "stainless-practice",
  title: "Stainless 304 inland, 316 near salt; never stainless together with zinc plate",
  status: "memory",
};
const DOCKS: Source = {
  id: "small-docks",
  title: "Management of small docks and piers, public slides (cdn.slideserve.com/balin)",
  at: "no creosote, no penta; limit CCA in poorly flushed water",
  status: "seen",
};

interface Pairing {
  readonly parts: readonly string[];
  readonly fasteners: readonly Fastener[];
  /** Names of the kit that the tables lack. */
  readonly unknown: readonly string[];
  readonly preservative: Preservative | null | "not-told";
  readonly isSalt: boolean;
}

function pairingOf(s: RuleSetting): Pairing {
  const { plan, layout, tables } = s.setting.input;
  const ids = fastenersOf(plan.kit);
  const { treatment, preservative } = plan.kit.lumber;
  const found = tables.preservatives.find((p) => p.id === preservative);
  return {
    parts: layout.parts.map((p) => p.id),
    fasteners: ids.flatMap((id) => tables.fasteners.find((f) => f.id === id) ?? []),
    unknown: ids.filter((id) => !tables.fasteners.some((f) => f.id === id)),
    preservative: treatment === "none" && preservative === null ? null : (found ?? "not-told"),
    isSalt: plan.water.exposure !== "fresh",
  };
}

/** Fasteners with treatment, salt and each other; the preservative with the wetland and with salt. */
export function pairingChecks(s: RuleSetting): CheckResult[] {
  const p = pairingOf(s);
  if (p.parts.length === 0) return [];
  return [
    ...shareResults(base("treatment", "Fasteners in treated lumber", FEMA), [withTreatment(p)]),
    ...shareResults(base("salt", "Fasteners near salt water", STAINLESS), [withSalt(p)]),
    ...shareResults(base("mixed", "Metals beside each other", STAINLESS), [together(p)]),
    ...shareResults(base("preservative", "Preservative in a wetland", DOCKS), [preserved(p)]),
  ];
}

const base = (id: string, title: string, rule: Source): RuleBase => ({
  id: `pairing.${id}`,
  kind: "pairing",
  title,
  rule,
  caution:
    "By the coating the tables name: read the box before buying. Hot-dip zinc lasts a few seasons near salt water, not for good.",
});

/** Counts what does not go together: none may. */
function counted(
  p: Pairing,
  wrong: readonly string[],
  what: string,
  rule: Source,
  words: { carries: string; change: string },
): Finding {
  const working: Trace = [];
  recordValue(working, {
    id: "rules.pairing",
    title: what,
    symbol: "n",
    value: wrong.length,
    unit: "1",
    source: rule,
    how: "counted in the kit",
    ...(wrong.length > 0 ? { note: wrong.join("; ") } : {}),
  });
  const verdict = {
    unit: "1",
    demand: qty(wrong.length, "1"),
    capacity: qty(0, "1"),
    governs: wrong[0] ?? "every fastener of the kit",
    working,
  } as const;
  return { kind: "judged", parts: p.parts, verdict, ...words };
}

const unknownFasteners = (p: Pairing): string[] => p.unknown.map((id) => `the coating of "${id}"`);
const unknown = (p: Pairing, missing: readonly string[]): Finding => ({
  kind: "unknown",
  parts: p.parts,
  missing,
});
const named = (f: Fastener): string => `${f.name} (${coatingWords[f.coating]})`;
const coatingWords: Readonly<Record<Fastener["coating"], string>> = {
  "stainless-316": "stainless 316",
  "stainless-304": "stainless 304",
  "hot-dip-zinc": "hot-dip zinc",
  "plain-zinc": "zinc plate",
  none: "no coating",
};

function withTreatment(p: Pairing): Finding {
  if (p.preservative === null)
    return { kind: "not-applicable", parts: p.parts, because: "the lumber is untreated" };
  if (p.preservative === "not-told") return unknown(p, ["which preservative the lumber holds"]);
  if (!p.preservative.has_copper)
    return { kind: "not-applicable", parts: p.parts, because: `${p.preservative.name} holds no copper` };
  const wrong = p.fasteners.filter((f) => f.coating === "plain-zinc" || f.coating === "none").map(named);
  if (wrong.length === 0 && p.unknown.length > 0) return unknown(p, unknownFasteners(p));
  return counted(p, wrong, `Fasteners that ${p.preservative.name} eats`, FEMA, {
    carries: wrong.length === 0 ? "Every coating stands copper." : `Copper eats: ${wrong.join("; ")}.`,
    change: "Would pass with hot-dip zinc or stainless fasteners throughout.",
  });
}

function withSalt(p: Pairing): Finding {
  if (!p.isSalt) return { kind: "not-applicable", parts: p.parts, because: "the water is fresh" };
  const stands = ["stainless-316", "hot-dip-zinc"];
  const wrong = p.fasteners.filter((f) => !stands.includes(f.coating)).map(named);
  if (wrong.length === 0 && p.unknown.length > 0) return unknown(p, unknownFasteners(p));
  return counted(p, wrong, "Fasteners that salt water eats soon", STAINLESS, {
    carries:
      wrong.length === 0 ? "Stainless 316 or hot-dip zinc throughout." : `Salt eats: ${wrong.join("; ")}.`,
    change: "Would pass with stainless 316, or with hot-dip zinc for a few seasons.",
  });
}

function together(p: Pairing): Finding {
  const stainless = p.fasteners.filter((f) => f.coating.startsWith("stainless"));
  const plated = p.fasteners.filter((f) => f.coating === "plain-zinc");
  const wrong = stainless.length > 0 ? plated.map(named) : [];
  if (wrong.length === 0 && p.unknown.length > 0) return unknown(p, unknownFasteners(p));
  return counted(p, wrong, "Zinc-plated fasteners beside stainless ones", STAINLESS, {
    carries:
      wrong.length === 0 ? "No zinc plate beside stainless." : `Beside stainless: ${wrong.join("; ")}.`,
    change: "Would pass with one metal throughout: stainless rusts zinc plate away.",
  });
}

function preserved(p: Pairing): Finding {
  const row = p.preservative;
  if (row === null) return { kind: "not-applicable", parts: p.parts, because: "the lumber is untreated" };
  if (row === "not-told") return unknown(p, ["which preservative the lumber holds"]);
  const wrong = [
    ...(row.restricted ? [`${row.name}: ${row.note}`] : []),
    ...(p.isSalt && row.salt_use === "no" ? [`${row.name} is not for timber in salt water`] : []),
  ];
  if (wrong.length === 0 && p.isSalt && row.salt_use !== "yes")
    return unknown(p, [
      row.salt_use === "unknown"
        ? `whether ${row.name} stands salt water`
        : `the retention on the end tag: ${row.name} stands salt water at marine retention only`,
    ]);
  return counted(p, wrong, "Reasons against the preservative here", DOCKS, {
    carries:
      wrong.length === 0 ? `${row.name} is not barred here by the guidance read.` : `${wrong.join("; ")}.`,
    change: "Would pass with untreated durable wood, or with a treatment that is not limited in wetlands.",
  });
}
