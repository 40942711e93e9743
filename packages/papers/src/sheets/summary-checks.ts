import type { CheckKind, CheckResult } from "@causey/engine/checks";
import { showShareOfLimit } from "@causey/engine/units";
import type { PaperContext } from "../set/context.ts";
import type { Block } from "../text/index.ts";

type Failed = Extract<CheckResult, { readonly status: "pass" | "fail" }>;
type Open = Extract<CheckResult, { readonly status: "cannot-check" }>;

/** Kinds of checks named one by one; those beyond are only counted. */
const MOST_FAILED = 4;
const MOST_OPEN = 6;
/** What engineers must look at, one by one. */
const MOST_FLAGS = 5;

/** What each kind of check asks, for readers who do not build. */
const KINDS: Readonly<Record<CheckKind, string>> = {
  "stringer-bending": "strength of the stringers",
  "stringer-shear": "shear in the stringers",
  "stringer-deflection": "sag of the stringers",
  "cross-piece": "strength of the cross pieces",
  deck: "strength of the deck",
  seat: "hold of the ends on their seats",
  bearing: "bearing of the ground",
  uplift: "staying put in a flood",
  lifting: "weight that people lift",
  platform: "strength of the platforms",
  damage: "strength when something gives way",
  supports: "strength of sills, posts and legs",
  fastening: "hold of screws, clips and nails",
  feel: "bounce and lasting sag",
  handling: "weight and strain while it is carried and stacked",
  settling: "settling into the ground",
  plot: "stillness at the plots",
  flood: "push of moving water",
  anchor: "hold of the stakes",
  cold: "ice and frost",
  edge: "edges and drops beside the deck",
  opening: "openings in the deck",
  grade: "steepness of the deck",
  width: "width of the deck",
  cart: "room for the cart",
  setback: "distance from channels",
  tipping: "standing firm against tipping",
  pairing: "wood treatment and fasteners",
  "deck-rule": "what the rules ask of the deck",
  "public-span": "spans under the public",
};

/** How the checks came out, what fails or is open first, and what an engineer must look at. */
export function checkBlocks({ results }: PaperContext): Block[] {
  const { checks } = results;
  return [
    { kind: "head", text: "Checks" },
    { kind: "text", text: tally(checks) },
    ...failedLines(checks).map(bullet),
    ...openLines(checks).map(bullet),
    ...engineerLines(results).map(bullet),
  ];
}

const bullet = (text: string): Block => ({ kind: "text", bullet: true, text });

/** What is not settled leads: a number of checks met says little while others fail or are open. */
function tally(checks: readonly CheckResult[]): string {
  const count = (status: CheckResult["status"]): number => checks.filter((c) => c.status === status).length;
  const [fail, open, pass, idle] = [
    count("fail"),
    count("cannot-check"),
    count("pass"),
    count("not-applicable"),
  ];
  const unsettled = [
    ...(open > 0 ? [`${open} cannot be checked and ${open === 1 ? "is" : "are"} not met until then`] : []),
    ...(fail > 0 ? [`${fail} ${fail === 1 ? "does" : "do"} not meet the chosen rule`] : []),
  ];
  const rest = `${pass} ${pass === 1 ? "meets" : "meet"} ${fail > 0 ? "it" : "the chosen rule"}, ${idle} ${idle === 1 ? "does" : "do"} not apply`;
  return unsettled.length > 0 ? `${unsettled.join("; ")}; ${rest}.` : `None fails and none is open: ${rest}.`;
}

/** The worst of each kind that fails, with how many of its kind do. */
function failedLines(checks: readonly CheckResult[]): string[] {
  const failed = checks.filter((c): c is Failed => c.status === "fail");
  const groups = [...byKind(failed).values()].map((group) =>
    group.toSorted((a, b) => b.utilisation - a.utilisation),
  );
  groups.sort((a, b) => b[0]!.utilisation - a[0]!.utilisation);
  const lines = groups.slice(0, MOST_FAILED).map(([worst, ...others]) => {
    const more = others.length > 0 ? `; ${others.length} more of this kind` : "";
    return `Does not meet it: ${worst!.title}, ${showShareOfLimit(worst!.utilisation)} of the limit${more}.`;
  });
  const left = groups.length - MOST_FAILED;
  return left > 0 ? [...lines, `And ${left} more ${left === 1 ? "kind" : "kinds"} that fail.`] : lines;
}

/** Which kinds are open, those with most checks first, and what is missing most often. */
function openLines(checks: readonly CheckResult[]): string[] {
  const open = checks.filter((c): c is Open => c.status === "cannot-check");
  if (open.length === 0) return [];
  const kinds = [...byKind(open)].toSorted((a, b) => b[1].length - a[1].length);
  const named = kinds.slice(0, MOST_OPEN).map(([kind, group]) => `${KINDS[kind]} (${group.length})`);
  const left = kinds.length - MOST_OPEN;
  const more = left > 0 ? [`and ${left} more ${left === 1 ? "kind" : "kinds"}`] : [];
  return [`Cannot be checked: ${[...named, ...more].join(", ")}. ${mainReason(open)}`];
}

/** What is missing most often, and how many checks lack it. */
function mainReason(open: readonly Open[]): string {
  const counts = new Map<string, number>();
  for (const check of open)
    for (const what of new Set(check.missing)) counts.set(what, (counts.get(what) ?? 0) + 1);
  const ordered = [...counts].toSorted((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
  const [most] = ordered;
  if (!most) return "";
  if (ordered.length === 1) return `Missing: ${most[0]}.`;
  return `Missing most often: ${most[0]} (${most[1]} of ${open.length}).`;
}

/** Every flag in short; parts and sources stand on the check summary. */
function engineerLines({ engineer }: PaperContext["results"]): string[] {
  if (engineer.length === 0)
    return ["No limit that calls an engineer is passed: that does not mean that none is needed."];
  const more = engineer.length - MOST_FLAGS;
  const flags = engineer.slice(0, MOST_FLAGS).map((f) => `${f.title}: ${f.because.replace(/\.$/, "")}`);
  const last = more > 0 ? [`and ${more} more, on the check summary`] : [];
  return [`A licensed engineer must look at: ${[...flags, ...last].join("; ")}.`];
}

function byKind<C extends CheckResult>(checks: readonly C[]): Map<CheckKind, C[]> {
  const groups = new Map<CheckKind, C[]>();
  for (const check of checks) groups.set(check.kind, [...(groups.get(check.kind) ?? []), check]);
  return groups;
}
