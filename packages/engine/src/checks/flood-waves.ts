import { crestLevel, flotationSafety, requiredHoldDown, throughOrOver } from "../flood/index.ts";
import type { Trace } from "../formula/index.ts";
import { metres, newtons, showQuantity } from "../units/index.ts";
import type { FloodCase } from "./flood-cases.ts";
import { crestOnPart, jointDepth, jointsById, partDepth, zeroOf, type FloodLoads } from "./flood-demand.ts";
import { pushOnPart } from "./flood-formulas.ts";
import {
  times,
  together,
  waveAt,
  waveOnShape,
  type Push,
  type WetLine,
  type WetPart,
} from "./flood-loads.ts";
import { floodBase, jointsUnder, partIds, sideResult, worstPart } from "./flood-side.ts";
import { MISSING_STRENGTH } from "./ground-strength.ts";
import { cannotCheck, notApplicable, resultOf } from "./result.ts";
import type { Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";
import { stakeShare } from "./uplift.ts";

/** Push of the wave on the worst part, and the lift of its crest. */
export function waveChecks(
  setting: Setting,
  line: WetLine,
  loads: FloodLoads,
  sideOf: (part: WetPart, e_m: number) => number | null,
): CheckResult[] {
  const { flood } = loads;
  const base = floodBase(`wave.${flood.id}`, `Push of waves, ${flood.name}`, partIds(line));
  const ids = jointsById(line);
  const pushOf = (part: WetPart): Push => {
    const own = loads.wave(part.shape, zeroOf(part), partDepth(flood, part));
    const under = jointsUnder(part, ids).map((j) => loads.wave(j.shape, 0, jointDepth(flood, j)));
    return together([...(own ? [own] : []), ...under.flatMap((u) => (u ? [times(u, 0.5)] : []))]);
  };
  const worst = worstPart(line.parts, pushOf, sideOf);
  if (worst === "tables" || worst === "strength") return [cannotCheck(base, [MISSING_STRENGTH])];
  if (!worst) return [notApplicable(base, `no wave of ${flood.name} reaches a part`)];
  const working: Trace = [];
  // The worst part may itself stand dry, pushed only through the supports under it.
  const wave = waveAt(setting, partDepth(flood, worst.part), working);
  const own = wave
    ? waveOnShape(setting, worst.part.shape, wave, zeroOf(worst.part), working)
    : { force_n: 0 };
  const all = pushOf(worst.part).force_n;
  const F_s = newtons(Math.max(0, all - own.force_n) / stakeShare({}));
  const demand = pushOnPart(
    { F_p: newtons(own.force_n), k_h: stakeShare({}, working), F_s, F_w: newtons(0) },
    working,
  );
  const pushed = sideResult(setting, base, worst, demand, flood, ids, working);
  return [pushed, crestCheck(setting, line, flood)];
}

/** Open share from which a deck lets the crest through, by the rule. */
const OPEN_ENOUGH = 0.4;

/** The crest under the part that it lifts most, against the part's own weight: the stakes stand under the anchors. */
function crestCheck(setting: Setting, line: WetLine, flood: FloodCase): CheckResult {
  const base = {
    ...floodBase(`wave-lift.${flood.id}`, `Crest over the underside, ${flood.name}`, partIds(line)),
    rule: throughOrOver,
  };
  const lifted = line.parts.map((part) => ({ part, U: crestOnPart(setting, flood, part) }));
  const worst = lifted.reduce((a, b) => (b.U > a.U ? b : a), lifted[0]!);
  const { deck } = setting.input.plan.kit;
  if (deck.kind !== "boards" && deck.open_share >= OPEN_ENOUGH)
    return notApplicable(
      base,
      "40 % or more of the deck is open: it lets the crest through; tie every panel",
    );
  const wave = waveAt(setting, partDepth(flood, worst.part));
  if (!wave || worst.U <= 0)
    return notApplicable(base, "the crest stays under every deck, or the whole wave over it");
  const working: Trace = [];
  const U = crestOnPart(setting, flood, worst.part, working);
  requiredHoldDown(
    { n_f: flotationSafety({}, working), B: U },
    working,
    "what the crest adds to the pull on the stakes",
  );
  const z_c = crestLevel({ d: wave.d, H: wave.H });
  const zero = zeroOf(worst.part);
  const say = (m: number): string => showQuantity(m, "m", setting.context.units);
  return resultOf(
    base,
    {
      unit: "m",
      demand: z_c,
      capacity: metres(zero),
      governs: `${flood.name}, ${worst.part.part.id}`,
      working,
    },
    {
      carries: `The crest lifts ${worst.part.part.id} with ${showQuantity(U, "N", setting.context.units)}; the anchors are held against it.`,
      change: `Would pass with its underside ${say(z_c - zero)} higher, or with a deck of which 40 % or more is open and every panel tied.`,
    },
  );
}
