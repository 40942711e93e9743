import type { Source, Trace } from "../formula/index.ts";
import { movementBeside, radiusOfArea, rigidPunch } from "../ground/index.ts";
import { recordValue } from "../formula/index.ts";
import { metres, qty, showQuantity } from "../units/index.ts";
import { liveOnJoint } from "./bearing.ts";
import { edgeFeet, EMPTY } from "./foot-loads.ts";
import { cannotCheck, notApplicable, resultOf } from "./result.ts";
import type { Setting } from "./setting.ts";
import { SINK_SOURCE, sinkLaw } from "./sink-law.ts";
import { plotStill } from "./soil-rules.ts";
import type { PlanSoil, SoilJoint } from "./soil.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import type { LoadCase } from "./walk-demand.ts";

const baseOf = (id: string, title: string, parts: readonly string[], rule: Source): CheckBase => ({
  id: `plot.${id}`,
  kind: "plot",
  title,
  parts,
  rule,
  caution: "Read the plot with nobody moving, and note who stood where: peat moves for minutes after a step.",
});

/** Movement at the plots whose readings must not feel who stands on the last support. */
export function plotChecks(setting: Setting, soil: PlanSoil): CheckResult[] {
  const { layout, plan, site } = setting.input;
  const named = new Set(plan.proof.ground.sensitive_plots);
  const calm = layout.reached.filter((r) => !named.has(r.plot));
  const results: CheckResult[] = [];
  for (const plot of named) {
    const reached = layout.reached.find((r) => r.plot === plot);
    const name = [...plan.plots, ...site.plots].find((p) => p.id === plot)?.name ?? plot;
    const parts = reached ? [reached.joint] : [];
    const base = baseOf(`movement.${plot}`, `Movement at the plot "${name}"`, parts, rigidPunch);
    results.push(
      reached
        ? movement(setting, soil, base, reached)
        : cannotCheck(base, ["a walkway that reaches this plot"]),
    );
  }
  if (calm.length === 0) return results;
  const parts = [...new Set(calm.map((r) => r.joint))];
  const names = calm.map((r) => r.plot).join(", ");
  const base = baseOf("movement", "Movement at the other plots", parts, rigidPunch);
  return [...results, notApplicable(base, `nobody told that a reading there feels a step: ${names}`)];
}

/** The heaviest single walker of the visits; the single load where nobody walks. */
function onePerson({ rungs }: Setting): LoadCase {
  const people = rungs.find((r) => r.ladder === "people");
  return (people ?? rungs.at(-1)!).load;
}

function movement(
  setting: Setting,
  soil: PlanSoil,
  base: CheckBase,
  reached: { readonly joint: string; readonly distance_m: number },
): CheckResult {
  const last = soil.joints.find((j) => j.met.joint.id === reached.joint);
  if (!last)
    return notApplicable(base, "the last joint stands on piles or floats: not on the ground beside the plot");
  const { plan, tables } = setting.input;
  const found = sinkLaw(plan.proof.ground.sinkage, tables.ground);
  if (found.kind === "missing") return cannotCheck(base, [found.missing]);
  if (found.kind === "unfit") return cannotCheck(base, [`a law of sinkage that holds. ${found.because}`]);
  const person = onePerson(setting);
  const working: Trace = [];
  person.explain(working);
  const moved = footMoves(last, person, found.law, working);
  if (moved === null) return cannotCheck(base, ["a sinkage: on this ground the foot goes right in"]);
  return judged(setting, base, last, { moved, distance_m: reached.distance_m, person }, working);
}

/** How far the pressed foot of the last support goes down when the person steps on it [m]. */
function footMoves(
  last: SoilJoint,
  person: LoadCase,
  law: Extract<ReturnType<typeof sinkLaw>, { kind: "law" }>["law"],
  working: Trace,
): number | null {
  const { stance } = last.plain;
  const full = edgeFeet(stance, liveOnJoint(last.joint, person), working).pressed;
  const empty = edgeFeet(stance, EMPTY).pressed;
  const [loaded, resting] = [law.sink(full, full.pressure_pa, working), law.sink(empty, empty.pressure_pa)];
  if (loaded === null || resting === null) return null;
  const moved = Math.max(0, loaded - resting);
  recordValue(working, {
    id: "check.plot.foot",
    title: "Movement of the foot when the person steps on",
    symbol: "w0",
    value: moved,
    unit: "m",
    source: SINK_SOURCE,
    how: "sinkage with the person less that without",
  });
  return moved;
}

function judged(
  setting: Setting,
  base: CheckBase,
  last: SoilJoint,
  step: { readonly moved: number; readonly distance_m: number; readonly person: LoadCase },
  working: Trace,
): CheckResult {
  const { units } = setting.context;
  const foot = edgeFeet(last.plain.stance, EMPTY).pressed;
  const A = qty(foot.along_m * foot.across_m, "m2");
  const a = radiusOfArea({ A }, working);
  // The foot may stand on the plot's side of the walkway.
  const r = metres(step.distance_m - foot.offset_m);
  const w0 = metres(step.moved);
  const at = r <= a ? w0 : movementBeside({ w0, a, r }, working);
  const most = plotStill({}, working);
  const show = (m: number): string => showQuantity(m, "m", units);
  return resultOf(
    base,
    { unit: "m", demand: metres(at), capacity: most, governs: step.person.name, working },
    {
      carries: `The last support goes down ${show(step.moved)}, the ground at the plot at most ${show(at)}.`,
      change:
        at <= most
          ? null
          : "Needs an independent support: stand on a board of its own, not tied to the walkway and farther from the plot, while reading.",
    },
  );
}
