/** The first free id of a kind: "S1", "S2". */
export function freeId(prefix: string, taken: readonly { readonly id: string }[]): string {
  const ids = new Set(taken.map((item) => item.id));
  for (let n = 1; ; n++) if (!ids.has(`${prefix}${n}`)) return `${prefix}${n}`;
}
