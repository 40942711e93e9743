import type { Source, Trace } from "../formula/index.ts";
import type { Layout } from "../layout/index.ts";
import type { Plan } from "../plan/document.ts";
import type { WalkwayKind } from "../request/index.ts";
import type { Site } from "../site/index.ts";
import { showQuantity } from "../units/index.ts";
import { deepPeat } from "./formulas.ts";
import { walkwayFacts, type WalkwayFacts } from "./kinds.ts";
import { onFoot } from "./on-foot.ts";
import { floodDepth, placeFacts, type PlaceFacts } from "./place.ts";

/** One warning about a kind at this place. */
export interface OptionWarning {
  readonly text: string;
  readonly source: Source;
}

/** Where one kind of walkway stands in a plan. */
export interface OptionLine extends WalkwayFacts {
  /** The user's decision; "not looked at" when the plan holds none, which is to be mended before a permit. */
  readonly status: "chosen" | "rejected" | "open" | "not looked at";
  /** The user's own reason; empty when none was given. */
  readonly reason: string;
  /** Decided, but without a reason. */
  readonly is_reason_missing: boolean;
  /** What this place says about it. */
  readonly notes: readonly string[];
  readonly warnings: readonly OptionWarning[];
  readonly working: Trace;
}

const FEN: Source = {
  id: "fen-handbook",
  title: "Fen Management Handbook, Scottish Natural Heritage (yumpu 11763786)",
  at: "page 248: floating on sleepers and battens alone was given up at three sites; stakes 75 x 75 mm, 4 m long, into soil about 3 m below the surface",
  status: "seen",
};
const FLOATED: Source = {
  id: "fen-handbook",
  title: "Fen Management Handbook, Scottish Natural Heritage (yumpu 11763786)",
  at: "page 248: floating away is the main danger to boardwalks",
  status: "seen",
};

const LOW: readonly WalkwayKind[] = ["ground-laid", "sleepers", "mats"];
const BATTENS: readonly WalkwayKind[] = ["ground-laid", "sleepers", "floats"];

/**
 * A status line for every kind of walkway, "no structure" among them, in the order of the facts.
 *
 * layout  null before one is made: the ground is then read at the plots
 */
export function optionLines(plan: Plan, site: Site, layout: Layout | null): OptionLine[] {
  const place = placeFacts(plan, site, layout);
  return walkwayFacts.map((facts) => {
    const choice = plan.request.options.findLast((o) => o.kind === facts.kind);
    const reason = choice?.reason.trim() ?? "";
    const foot = facts.kind === "no-structure" ? onFoot(plan, site) : null;
    return {
      ...facts,
      status: choice?.status ?? "not looked at",
      reason,
      is_reason_missing: choice !== undefined && choice.status !== "open" && reason === "",
      notes: foot ? [...foot.words, ...wetFeet(plan)] : notesOf(facts.kind, plan, place),
      warnings: warningsOf(facts.kind, plan, place),
      working: foot?.working ?? [],
    };
  });
}

/** Kinds that nobody has looked at, or that were decided without a reason: to be mended before the permit papers. */
export const unsettledOptions = (lines: readonly OptionLine[]): OptionLine[] =>
  lines.filter((l) => l.status === "not looked at" || l.is_reason_missing);

const wetFeet = ({ request }: Plan): string[] => {
  if (request.wet_feet_ok === null) return ["The visitors were not asked whether they accept wet feet."];
  return [request.wet_feet_ok ? "The visitors accept wet feet." : "The visitors do not accept wet feet."];
};

function notesOf(kind: WalkwayKind, plan: Plan, place: PlaceFacts): string[] {
  const say = (m: number): string => showQuantity(m, "m", plan.units);
  switch (kind) {
    case "another-season":
      return [
        ...plan.visits.map((v) => `"${v.name}" runs from ${v.from} to ${v.to ?? "no last day"}.`),
        ...place.closures.map((name) => `Seasonal closure: ${name}.`),
      ];
    case "by-boat":
      return [
        place.has_channel
          ? "The site has a channel or pool: see the water levels for the hours it can be used."
          : "The site has no channel or pool that a boat could use.",
      ];
    case "post-pairs":
    case "screw-piles":
      return [
        place.peat_m === null
          ? "The depth to firm ground was not probed."
          : `The deepest probe sank ${say(place.peat_m)} before firm ground.`,
      ];
    default:
      return [];
  }
}

function warningsOf(kind: WalkwayKind, plan: Plan, place: PlaceFacts): OptionWarning[] {
  const say = (m: number): string => showQuantity(m, "m", plan.units);
  const warnings: OptionWarning[] = [];
  const deep = place.peat_m !== null && place.peat_m > deepPeat({});
  if (deep && BATTENS.includes(kind))
    warnings.push({
      text: `Peat is ${say(place.peat_m!)} deep: walkways that lay or floated on battens alone sank and rippled on deep peat, and need stakes into firm ground.`,
      source: FEN,
    });
  const depth = floodDepth(place);
  if (depth !== null && depth > 0 && LOW.includes(kind))
    warnings.push({
      text: `${place.flood!.name} stands ${say(depth)} over the lowest ground: what lies low floats away unless it is staked.`,
      source: FLOATED,
    });
  if (kind === "floats" && depth !== null && depth <= 0)
    warnings.push({
      text: `${place.flood!.name} does not reach the ground: floats would lie dry on the plants.`,
      source: walkwayFacts.find((f) => f.kind === "floats")!.source,
    });
  return warnings;
}
