import type { LayoutFacts } from "./facts.ts";
import type { Layout } from "./types.ts";

/** Sizes of a kit's own parts [m]. */
export type StandardParts = Pick<LayoutFacts, "lengths_m" | "platform_side_m">;

const SAME_M = 1e-4;

/**
 * Parts that no jig of the kit makes: their length or side is none of its own, to a tenth of a millimetre. The search
 * lays whole parts alone, so there are some only where what lies in the field was built by another recipe.
 */
export function customParts(
  { parts }: Pick<Layout, "parts">,
  { lengths_m, platform_side_m }: StandardParts,
): { readonly custom_parts: readonly string[]; readonly custom_because: string } {
  const isOwn = (length: number, own: readonly number[]): boolean =>
    own.some((l) => Math.abs(l - length) <= SAME_M);
  const custom_parts = parts
    .filter((p) => !(p.kind === "module" ? isOwn(p.length_m, lengths_m) : isOwn(p.side_m, [platform_side_m])))
    .map((p) => p.id);
  const custom_because =
    custom_parts.length === 0
      ? "None: every part is one of the kit's own, laid whole."
      : `${custom_parts.join(", ")}: of a size that the kit does not have, so made for ${custom_parts.length === 1 ? "its place" : "their places"}.`;
  return { custom_parts, custom_because };
}
