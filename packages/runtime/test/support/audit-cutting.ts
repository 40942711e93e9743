import type { CuttingPattern, CuttingPlan, CuttingProblem } from "@causey/engine/fabrication";

/** Shared with nothing: counts and adds what the plan says, and lists every fault. Lengths in whole millimetres. */
export function auditCutting(problem: CuttingProblem, plan: CuttingPlan): string[] {
  return [
    ...plan.patterns.flatMap((p) => auditPattern(problem, p)),
    ...auditPieces(problem, plan),
    ...auditSticks(problem, plan),
    ...auditCost(problem, plan),
  ];
}

/** The saw travels along the stick: piece, cut, piece, cut; the last cut is spared when the piece ends the stick. */
function auditPattern(problem: CuttingProblem, pattern: CuttingPattern): string[] {
  const name = `pattern ${JSON.stringify(pattern)}`;
  let at = 0;
  for (const { length_mm, count } of pattern.cuts)
    for (let n = 0; n < count; n++) {
      at += length_mm;
      if (at > pattern.stock_mm) return [`${name} runs off its stick`];
      if (at < pattern.stock_mm) at += problem.kerf_mm;
    }
  const left = Math.max(0, pattern.stock_mm - at);
  const faults = left === pattern.offcut_mm ? [] : [`${name} leaves ${left} mm`];
  if (!Number.isInteger(pattern.times) || pattern.times < 1) faults.push(`${name} has a bad number of times`);
  if (pattern.cuts.some((c) => !Number.isInteger(c.count) || c.count < 1))
    faults.push(`${name} has a bad count`);
  return faults;
}

function auditPieces({ pieces }: CuttingProblem, plan: CuttingPlan): string[] {
  const wanted = sums(pieces.map((p) => [p.length_mm, p.count]));
  const cut = sums(
    plan.patterns.flatMap((p) => p.cuts.map((c) => [c.length_mm, c.count * p.times] as const)),
  );
  return [...new Set([...wanted.keys(), ...cut.keys()])]
    .filter((length) => wanted.get(length) !== cut.get(length))
    .map((length) => `${length} mm: wanted ${wanted.get(length) ?? 0}, cut ${cut.get(length) ?? 0}`);
}

function auditSticks(problem: CuttingProblem, plan: CuttingPlan): string[] {
  const sawn = sums(plan.patterns.map((p) => [p.stock_mm, p.times]));
  const used = sums(plan.stock_used.map((s) => [s.length_mm, s.count]));
  const sold = sums(problem.stock.map((s) => [s.length_mm, s.available ?? Infinity]));
  return [...new Set([...sawn.keys(), ...used.keys()])].flatMap((length) => [
    ...(sawn.get(length) === used.get(length) ? [] : [`${length} mm sticks: sawn and bought differ`]),
    ...((used.get(length) ?? 0) <= (sold.get(length) ?? 0)
      ? []
      : [`${length} mm sticks: more than there are`]),
  ]);
}

/** Sticks of one length at several prices: the cheapest are bought first. */
function auditCost(problem: CuttingProblem, plan: CuttingPlan): string[] {
  let cost = 0;
  for (const { length_mm, count } of plan.stock_used) {
    const offers = problem.stock.filter((s) => s.length_mm === length_mm).sort((a, b) => a.price - b.price);
    let left = count;
    for (const offer of offers) {
      const bought = Math.min(left, offer.available ?? Infinity);
      cost += bought * offer.price;
      left -= bought;
    }
  }
  const isSame = Math.abs(cost - plan.cost) <= 1e-9 * Math.max(1, cost);
  const faults = isSame ? [] : [`the sticks cost ${cost}, the plan says ${plan.cost}`];
  if (!(plan.bound <= plan.cost)) faults.push(`bound ${plan.bound} above cost ${plan.cost}`);
  if (plan.proven && plan.cost - plan.bound > 1e-9 * plan.cost) faults.push("proven with an open gap");
  return faults;
}

function sums(pairs: readonly (readonly [number, number])[]): Map<number, number> {
  const totals = new Map<number, number>();
  for (const [key, value] of pairs) totals.set(key, (totals.get(key) ?? 0) + value);
  return totals;
}
