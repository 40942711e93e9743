import { DomainError } from "../units/index.ts";

const MS_PER_DAY = 86_400_000;

/** Whole days from one ISO day to another; negative when the second is earlier. Throws `DomainError` for no day. */
export function daysBetween(from: string, to: string): number {
  const days = (Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / MS_PER_DAY;
  if (!Number.isFinite(days)) throw new DomainError("not-a-day", { from, to });
  return Math.round(days);
}

/** Days that a stretch of days, both ends included, has in each calendar year it touches. */
export function daysByYear(
  from: string,
  to: string,
): readonly { readonly year: number; readonly days: number }[] {
  const [first, last] = [Number(from.slice(0, 4)), Number(to.slice(0, 4))];
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, n) => {
    const year = first + n;
    const begin = year === first ? from : `${year}-01-01`;
    const end = year === last ? to : `${year}-12-31`;
    return { year, days: daysBetween(begin, end) + 1 };
  }).filter(({ days }) => days > 0);
}
