import type { Part } from "./types.ts";

/** Joints under the edges that a platform's stringers end at: the one it is entered by, and the one straight on. */
export const stringerEdgeJoints = (parts: readonly Part[]): ReadonlySet<string> =>
  new Set(parts.flatMap((p) => (p.kind === "platform" ? [p.from, p.exits.ahead] : [])));
