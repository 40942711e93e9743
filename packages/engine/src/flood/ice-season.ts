/** Days a walkway stands, ISO dates, both counted. */
export interface Standing {
  readonly from: string;
  readonly to: string;
}

export type IceVerdict =
  | { readonly status: "cannot-check"; readonly words: string }
  | { readonly status: "clear"; readonly words: string }
  | { readonly status: "lift-out"; readonly by: string; readonly words: string }
  | { readonly status: "frozen-in"; readonly from: string; readonly words: string };

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
const daysIn = (year: number, month: number): number => (month === 2 && isLeap(year) ? 29 : DAYS[month - 1]!);
const iso = (year: number, month: number, day: number): string =>
  `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;

/** Whether a text is a day of the calendar as 2027-05-31. */
export function isDay(text: string): boolean {
  const match = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text);
  if (!match) return false;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
}

/** First day from `from` to `to` in a month with ice; null when there is none. */
function firstIceDay({ from, to }: Standing, months: readonly number[]): string | null {
  let [year, month] = from.split("-").map(Number) as [number, number];
  for (let i = 0; i < 12; i++) {
    const first = i === 0 ? from : iso(year, month, 1);
    if (first > to) return null;
    if (months.includes(month)) return first;
    month = (month % 12) + 1;
    if (month === 1) year++;
  }
  return null;
}

function dayBefore(day: string): string {
  const [year, month, date] = day.split("-").map(Number) as [number, number, number];
  if (date > 1) return iso(year, month, date - 1);
  if (month > 1) return iso(year, month - 1, daysIn(year, month - 1));
  return iso(year - 1, 12, 31);
}

/**
 * What the months with ice ask of a walkway that stands from one day to another.
 *
 * standing   ISO days, `to` not before `from`; null = not known
 * months     months with ice at this site, 1 to 12; an empty list = no ice; null = not known
 * lifts_out  whether the plan takes it up before the ice; null = not known
 *
 * clear      no day of it lies in a month with ice
 * lift-out   it is taken up: by the day before the first such month
 * frozen-in  it stands in the ice, and fails: posts are lifted with the ice
 */
export function iceVerdict(
  standing: Standing | null,
  months: readonly number[] | null,
  lifts_out: boolean | null,
): IceVerdict {
  const missing = [
    ...(standing ? [] : ["the days from which and to which it stands"]),
    ...(months ? [] : ["the months with ice at this site"]),
  ];
  if (!standing || !months) return cannot(missing);
  const first = firstIceDay(standing, months);
  if (first === null) return { status: "clear", words: "It stands in no month with ice." };
  if (lifts_out === null) return cannot(["whether it is lifted out before the ice"]);
  if (!lifts_out || first === standing.from)
    return {
      status: "frozen-in",
      from: first,
      words: `Frozen in from ${first}: fails. Rising ice lifts posts and stakes with it. Take up decks and posts before.`,
    };
  const by = dayBefore(first);
  return { status: "lift-out", by, words: `Lift out by ${by}: the month after it has ice.` };
}

const cannot = (missing: readonly string[]): IceVerdict => ({
  status: "cannot-check",
  words: `Cannot be checked: missing ${missing.join(", and ")}.`,
});
