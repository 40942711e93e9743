import type { Peak, Peaks } from "../module-frame/index.ts";
import { areaDemand, limitOf, listsByLimit } from "./area-load.ts";
import { largestDeflection, largestMoment, largestReaction, type Train } from "../structure/index.ts";
import { distinctStringers } from "./frame.ts";
import type { Held, StringerCheck, StringerModel } from "./stringer-model.ts";
import type { LoadCase } from "./walk-demand.ts";

const trainOn = ({ share }: StringerModel, stringer: number, { loads }: LoadCase): Train =>
  loads.map((load) => ({ at: load.at, weight: load.weight * share(stringer, load) }));

/** Live demand on one stringer by itself, cross pieces hinged [N*m, N or m]. */
function liveDemand(check: StringerCheck, model: StringerModel, stringer: number, load: LoadCase): number {
  if (load.area_pa !== undefined) return areaDemand(check, model, stringer, load.area_pa);
  const train = trainOn(model, stringer, load);
  const span = model.frame.span_m;
  if (check === "bending") return largestMoment(train, span).value;
  if (check === "shear") return largestReaction(train, span).value;
  return largestDeflection(train, span).value / model.stiffness;
}

export interface Governing {
  readonly load: LoadCase;
  readonly stringer: number;
  /** Without factors [N*m, N or m]. */
  readonly dead: number;
  readonly live: number;
  readonly utilisation: number;
  /** The combination that asks for most; none of the code's for a deflection. */
  readonly held: Held;
  /** The peak of the whole frame, where stiff cross pieces load the stringer more than hinged ones. */
  readonly peak: Peak | null;
}

/** Share of what one combination allows: loads with their factors over the capacity. */
const shareOf = (
  check: "bending" | "shear",
  { combination: c, ...held }: Held,
  dead: number,
  live: number,
) => {
  const demand = c.dead * dead + c.live * live;
  return held[check] > 0 ? demand / held[check] : demand > 0 ? Infinity : 0;
};

/** Deflection that is allowed under a case: by its own rule, or by the checks' limit [m]. */
const allowedUnder = ({ frame, allowed }: StringerModel, load?: LoadCase): number =>
  load?.span_over === undefined ? allowed : frame.span_m / load.span_over;

/** Utilisation under all combinations of the code, and the one that asks for most. */
export function utilisationOf(
  check: StringerCheck,
  model: StringerModel,
  dead: number,
  live: number,
  load?: LoadCase,
): { readonly utilisation: number; readonly held: Held } {
  const { held } = model;
  const first = held[0]!;
  if (check === "deflection") return { utilisation: live / allowedUnder(model, load), held: first };
  let worst = { utilisation: shareOf(check, first, dead, live), held: first };
  for (const one of held.slice(1)) {
    const utilisation = shareOf(check, one, dead, live);
    if (utilisation > worst.utilisation) worst = { utilisation, held: one };
  }
  return worst;
}

/** The case and the stringer with the largest utilisation, each stringer by itself. */
export function governingAlone(
  check: StringerCheck,
  model: StringerModel,
  cases: readonly LoadCase[],
): Governing {
  let worst: Governing | undefined;
  let most = 0;
  const dead = model.dead[check];
  for (const load of cases)
    for (const stringer of distinctStringers(model.frame)) {
      const live = liveDemand(check, model, stringer, load);
      // A deflection counts by the limit of its own case.
      const weight = check === "deflection" ? live * limitOf(load) : live;
      if (worst && weight <= most) continue;
      most = weight;
      worst = { load, stringer, dead, live, ...utilisationOf(check, model, dead, live, load), peak: null };
    }
  return worst!;
}

const peakOf = { bending: "moment", shear: "shear", deflection: "sag" } as const;

/**
 * The case and the stringer with the largest utilisation: each stringer by itself between hinged cross pieces, and the
 * whole frame with its cross pieces stiff, whichever asks for more.
 */
export function governing(check: StringerCheck, model: StringerModel, cases: readonly LoadCase[]): Governing {
  const alone = governingAlone(check, model, cases);
  let worst = alone;
  for (const list of check === "deflection" ? listsByLimit(cases) : [cases]) {
    const peaks = model.stiff(list);
    if (peaks) worst = worseOf(check, model, worst, peaks, list);
  }
  return worst;
}

function worseOf(
  check: StringerCheck,
  model: StringerModel,
  alone: Governing,
  { largest }: Peaks,
  cases: readonly LoadCase[],
): Governing {
  const peak = largest[peakOf[check]];
  if (!peak) return alone;
  const [dead, live] = [peak.own, peak.value - peak.own];
  const load = cases.find((c) => c.name === peak.load.name)!;
  const stiff = utilisationOf(check, model, dead, live, load);
  if (stiff.utilisation <= alone.utilisation * (1 + 1e-9)) return alone;
  return { load, stringer: peak.member, dead, live, ...stiff, peak };
}

/**
 * Whether one load passes on every stringer. The whole frame is asked only where it governs the plan's own cases: it
 * is dear, and hinged cross pieces load a stringer most almost everywhere.
 */
export function passes(
  check: StringerCheck,
  model: StringerModel,
  load: LoadCase,
  doesFrameGovern: boolean,
): boolean {
  const found = doesFrameGovern ? governing(check, model, [load]) : governingAlone(check, model, [load]);
  return found.utilisation <= 1;
}

/** Whether cases pass with every stringer by itself: a cheap look before the whole frame is asked. */
export const passAlone = (check: StringerCheck, model: StringerModel, cases: readonly LoadCase[]): boolean =>
  governingAlone(check, model, cases).utilisation <= 1;

/** The largest live demand that still passes beside a dead one [N*m, N or m]; 0 when own weight alone fails. */
export function liveLeft(check: StringerCheck, { held, allowed, dead }: StringerModel): number {
  if (check === "deflection") return allowed;
  const left = held
    .filter(({ combination }) => combination.live > 0)
    .map((one) => (one[check] - one.combination.dead * dead[check]) / one.combination.live);
  return Math.max(0, Math.min(...left));
}
