import type { AccessRequest } from "./types.ts";

/** Of a plan what an access request says; `Plan` fits. */
export interface Asked {
  readonly request: AccessRequest;
  readonly visits: readonly {
    readonly name: string;
    readonly to: string | null;
    readonly cart: {
      readonly load_kg: number;
      readonly wet_kg: number;
      readonly width_mm: number | null;
      readonly length_mm: number | null;
    } | null;
  }[];
}

/** Something that the request does not say yet, and whom it stops. */
export interface RequestGap {
  /** Where it belongs: a path into the plan. */
  readonly place: string;
  readonly message: string;
  readonly why: string;
}

/**
 * What an access request leaves open, in the order in which a steward would ask: nothing here stops the planning, but
 * each is asked by a permit officer or changes what the walkway must carry.
 */
export function requestGaps({ request, visits }: Asked): readonly RequestGap[] {
  const gaps: RequestGap[] = [];
  const ask = (place: string, isOpen: boolean, message: string, why: string): void => {
    if (isOpen) gaps.push({ place, message, why });
  };
  ask(
    "request.requester",
    request.requester === "",
    "Nobody is named who asks for access.",
    "A permit names an investigator.",
  );
  ask(
    "request.purpose",
    request.purpose === "",
    "The purpose is not told.",
    "A permit asks for purpose and need.",
  );
  ask(
    "request.wet_feet_ok",
    request.wet_feet_ok === null,
    "Whether wet feet at high water are accepted is not told.",
    "Where they are not, a caution names the deck that lies below ordinary high water.",
  );
  ask(
    "visits",
    visits.length === 0,
    "No visit is listed.",
    "Without one nothing is known of people, carts and days.",
  );
  visits.forEach((visit, i) => {
    const at = (key: string): string => `visits[${i}].${key}`;
    ask(
      at("to"),
      visit.to === null,
      `"${visit.name}" has no last day.`,
      "A temporary walkway needs an end: the permit and the removal hang on it.",
    );
    ask(
      at("cart.width_mm"),
      visit.cart !== null && (visit.cart.width_mm === null || visit.cart.length_mm === null),
      `The size of the cart of "${visit.name}" is not told.`,
      "Whether it passes between the curbs and turns on a platform cannot be checked.",
    );
    ask(
      at("cart.wet_kg"),
      visit.cart !== null && visit.cart.load_kg > 0 && visit.cart.wet_kg === 0,
      `The load of "${visit.name}" is given dry.`,
      "Mud, rain and wet samples add to it.",
    );
  });
  const isStructureWeighed = request.options.some((o) => o.kind === "no-structure" && o.status !== "open");
  ask(
    "request.options",
    !isStructureWeighed,
    "Whether the visits could do without a structure has not been answered.",
    "Avoiding harm comes before lessening it; a permit asks for the reason.",
  );
  return gaps;
}
