import { makeSeries, wetness } from "@causey/engine/water";
import { demoPlan } from "./demo-plan.mjs";
import { clock } from "./report.mjs";

const M2_H = 12.4206;
const JOINTS = 110;

/**
 * Hours under water of ground and deck at every joint of a walkway with so many, dry days of the laying included: of a
 * year of readings, and of highs and lows. The tide is made up: two constituents, so that springs and neaps come and go.
 */
export async function* rows() {
  const { site, plan } = await demoPlan();
  const joints = Array.from({ length: JOINTS }, (_, n) => ({
    id: `J${n}`,
    ground_m: 0.9 + n / 200,
    deck_m: 1.4 + n / 200,
  }));
  const begin = Date.parse(plan.laying.from) / 1000 - 3 * 86_400;
  for (const [what, kind, years, step_s] of [
    ["readings every 6 minutes", "readings", 1, 360],
    ["readings every 6 minutes", "readings", 2, 360],
    ["readings every 6 minutes", "readings", 4, 360],
    ["highs and lows", "high-low", 5, (M2_H / 2) * 3600],
    ["highs and lows", "high-low", 19, (M2_H / 2) * 3600],
  ]) {
    const count = Math.floor((years * 365.25 * 86_400) / step_s);
    const t_s = Float64Array.from({ length: count }, (_, i) => begin + i * step_s);
    const z_m = t_s.map((t) => height((t - begin) / 3600));
    const work = () =>
      wetness({
        levels: site.levels,
        series: makeSeries({ kind, basis: "predicted", t_s, z_m }),
        joints,
        height_band_m: 0.05,
        datum: site.datum,
        laying: { from: plan.laying.from, to: plan.laying.to },
      });
    yield { of: what, years, levels: count, joints: joints.length, ms: clock(work, 3).ms };
  }
}

const turn = (hours, period_h) => Math.cos((2 * Math.PI * hours) / period_h);
const height = (hours) => 0.4 + turn(hours, M2_H) + 0.3 * turn(hours, 12);
