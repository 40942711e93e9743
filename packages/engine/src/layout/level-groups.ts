import type { PlacedNetwork } from "./assemble.ts";

/** Joints of one platform, or of platforms that meet, in one group each: they share one deck height. */
export function levelGroups(n: PlacedNetwork): string[][] {
  const groups: string[][] = [];
  for (const part of n.parts) {
    if (part.kind !== "platform") continue;
    const edges = [part.from, part.exits.ahead, part.exits.left, part.exits.right];
    const joined = groups.find((g) => g.includes(part.from));
    if (joined) joined.push(...edges.slice(1));
    else groups.push(edges);
  }
  return groups;
}
