/** Ids that count on from one another joined as `A49 to A52`; the others each for itself, in order of name and number. */
export function idRuns(ids: readonly string[]): string {
  const named = [...new Set(ids)].map((id) => {
    const [, name, digits] = /^(.*?)(\d*)$/.exec(id)!;
    return { id, name: name!, number: digits === "" ? null : Number(digits) };
  });
  named.sort((a, b) => (a.name === b.name ? (a.number ?? -1) - (b.number ?? -1) : a.name < b.name ? -1 : 1));
  const runs: (typeof named)[] = [];
  for (const item of named) {
    const last = runs.at(-1)?.at(-1);
    const goesOn = last?.name === item.name && last.number !== null && item.number === last.number + 1;
    if (goesOn) runs.at(-1)!.push(item);
    else runs.push([item]);
  }
  return runs.flatMap(runWords).join(", ");
}

const runWords = (run: readonly { readonly id: string }[]): string[] =>
  run.length < 3 ? run.map((r) => r.id) : [`${run[0]!.id} to ${run.at(-1)!.id}`];
