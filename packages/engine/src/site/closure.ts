import type { Zone } from "./types.ts";

/** Month-day of an ISO date, `2026-04-15` -> `04-15`. */
const monthDay = (iso: string): string => iso.slice(5, 10);

/**
 * Whether a zone is shut to laying at any time between two ISO dates, both inclusive.
 * Closed areas and buffers always are; a seasonal closure when its days meet the span; it may run over New Year.
 */
export function isShut(zone: Zone, from: string, to: string): boolean {
  if (zone.use === "closed" || zone.use === "buffer") return true;
  if (zone.use !== "seasonal-closure") return false;
  if (!zone.from || !zone.to) return true;
  if (Date.parse(to) - Date.parse(from) >= 365 * 86_400_000) return true;
  const [a, b] = [monthDay(from), monthDay(to)];
  return circularSpans(zone.from, zone.to).some(([c, d]) =>
    circularSpans(a, b).some(([e, f]) => c <= f && e <= d),
  );
}

const circularSpans = (a: string, b: string): [string, string][] =>
  a <= b
    ? [[a, b]]
    : [
        [a, "12-31"],
        ["01-01", b],
      ];
