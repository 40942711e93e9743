import type { Kit, SupportKind } from "@causey/engine/kit";
import type { Findings } from "../problem/index.ts";
import type { KitChoice } from "./kit-schema.ts";

type SupportChoice = NonNullable<KitChoice["supports"]>[number];

/**
 * The kit that a plan names, with the site's own decisions about its supports: the lowest ground a kind may stand on,
 * the greatest height it is built to, or that it is left out. Supports that are not mentioned stay as they are.
 *
 * ready  the kits that the caller can offer
 * Reports an unknown kit or support, and a kit that is left without supports; null after a fault.
 */
export function resolveKit(found: Findings, choice: KitChoice, ready: readonly Kit[]): Kit | null {
  const kit = ready.find((k) => k.id === choice.ready);
  if (kit === undefined) {
    kitFault(found, "kit.ready", choice.ready, "There is no ready kit of this id", ready);
    return null;
  }
  const choices = choice.supports ?? [];
  const known = checkSupports(found, kit, choices);
  const supports = kit.supports.flatMap(
    (s) =>
      adjust(
        s,
        choices.find((c) => c.id === s.id),
      ) ?? [],
  );
  if (supports.length > 0) return known ? { ...kit, supports } : null;
  found.error({
    code: "kit-no-supports",
    place: "kit.supports",
    value: "all left out",
    message: "Every kind of support of the kit is left out: the walkway would stand on nothing.",
    mend: 'Leave at least one in: set "use" to true.',
  });
  return null;
}

function checkSupports(found: Findings, kit: Kit, choices: readonly SupportChoice[]): boolean {
  const ids = choices.map((c) => c.id);
  const faults = choices.flatMap((c, i) => {
    const place = `kit.supports[${i}].id`;
    if (!kit.supports.some((s) => s.id === c.id))
      return [
        () => kitFault(found, place, c.id, `The kit "${kit.id}" has no support of this id`, kit.supports),
      ];
    return ids.indexOf(c.id) < i
      ? [() => kitFault(found, place, c.id, "This support is named twice", kit.supports)]
      : [];
  });
  for (const report of faults) report();
  return faults.length === 0;
}

const kitFault = (
  found: Findings,
  place: string,
  value: string,
  message: string,
  known: readonly { readonly id: string }[],
): void =>
  found.error({
    code: "kit-choice",
    place,
    value,
    message: `${message}.`,
    mend: `Use one of: ${known.map((k) => k.id).join(", ") || "(none is offered)"}; each once.`,
  });

function adjust(support: SupportKind, choice: SupportChoice | undefined): SupportKind | null {
  if (choice?.use === false) return null;
  return {
    ...support,
    height_max_mm: choice?.height_max_mm ?? support.height_max_mm,
    stands:
      choice?.ground_above_m === undefined
        ? support.stands
        : { ...support.stands, ground_above_m: choice.ground_above_m },
  };
}
