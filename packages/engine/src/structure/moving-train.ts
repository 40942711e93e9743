/** One load of a train: `at` is its place along the train [m], `weight` its downward force [N] >= 0. */
export interface TrainLoad {
  readonly at: number;
  readonly weight: number;
}
/** Point loads at fixed distances that move together over a span; may run either way. */
export type Train = readonly TrainLoad[];

export interface Extreme {
  readonly value: number;
  /** Distance from the left support at which it acts [m]. */
  readonly section: number;
  /** Where the train's origin (`at` = 0) then stands, from the left support [m]. */
  readonly origin: number;
}

const NOTHING: Extreme = { value: 0, section: 0, origin: 0 };
const EDGE = 1e-9;

/** Moment at a section of a simple span for a train with its origin at `origin`; loads beyond the supports do nothing. */
export function trainMoment(train: Train, span: number, origin: number, section: number): number {
  let sum = 0;
  for (const { at, weight } of train) {
    const x = origin + at;
    if (x <= 0 || x >= span) continue;
    sum += x <= section ? (weight * x * (span - section)) / span : (weight * section * (span - x)) / span;
  }
  return sum;
}

/**
 * Largest bending moment of a train moving over a simple span, exact for point loads.
 *
 * For every run of neighbouring loads that fits on the span, and every load of it: the load and the resultant of
 * the run are set equally far from midspan, and the moment under the load is taken from all loads then on the
 * span. Between entries and exits the moment under a load is a downward parabola of the train's place, and an
 * entry or exit only bends it upward, so the largest value is among these.
 *
 * span [m] > 0; value [N*m].
 */
export function largestMoment(train: Train, span: number): Extreme {
  const loads = [...train].sort((a, b) => a.at - b.at);
  let best = NOTHING;
  for (let first = 0; first < loads.length; first++) {
    let weight = 0;
    let moment = 0;
    for (let last = first; last < loads.length; last++) {
      if (loads[last]!.at - loads[first]!.at > span) break;
      weight += loads[last]!.weight;
      moment += loads[last]!.weight * loads[last]!.at;
      if (weight > 0) best = bestOfRun(loads, span, first, last, moment / weight, best);
    }
  }
  return best;
}

function bestOfRun(
  loads: Train,
  span: number,
  first: number,
  last: number,
  resultant: number,
  before: Extreme,
): Extreme {
  let best = before;
  for (let k = first; k <= last; k++) {
    const at = loads[k]!.at;
    const origin = span / 2 - (resultant + at) / 2;
    const section = origin + at;
    if (section <= 0 || section >= span) continue;
    const value = trainMoment(loads, span, origin, section);
    if (value > best.value) best = { value, section, origin };
  }
  return best;
}

/**
 * Largest end reaction, equal to the largest end shear, of a train moving over a simple span: exact. The reaction
 * is linear between entries, so one load stands just inside a support. A wheel near the support counts in full.
 */
export function largestReaction(train: Train, span: number): Extreme {
  let best = NOTHING;
  for (const stand of train) {
    for (const way of [1, -1]) {
      let value = 0;
      for (const { at, weight } of train) {
        const x = way * (at - stand.at);
        if (x >= -EDGE && x < span) value += weight * (1 - Math.max(x, 0) / span);
      }
      const support = way > 0 ? 0 : span;
      if (value > best.value) best = { value, section: support, origin: support - stand.at };
    }
  }
  return best;
}

/**
 * Largest reaction of a support between two simple spans under a train: exact. Its influence line is 1 over the
 * support and falls to 0 at the far ends, so one load stands over the support. A span of 0 means there is none.
 */
export function largestJointReaction(train: Train, left: number, right: number): Extreme {
  let best = NOTHING;
  for (const way of [1, -1])
    for (const stand of train) {
      let value = 0;
      for (const { at, weight } of train) {
        const x = way * (at - stand.at);
        const reach = x < -EDGE ? left : right;
        if (Math.abs(x) <= EDGE) value += weight;
        else if (Math.abs(x) < reach) value += weight * (1 - Math.abs(x) / reach);
      }
      if (value > best.value) best = { value, section: 0, origin: -stand.at };
    }
  return best;
}
