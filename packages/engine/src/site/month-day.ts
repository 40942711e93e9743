const MONTHS = "January February March April May June July August September October November December".split(
  " ",
);
/** 29 February is a day of the year: a season may end on it. */
const DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * A day of the year as people write it, as `04-01`: "04-01", "4-1", "1 Apr", "1. April", "April 1st", "2027-04-01".
 * Null when it is none, or when it could be read as two days: "1/4" is not taken.
 */
export function readMonthDay(text: string): string | null {
  const word = text.trim().toLowerCase();
  const numbers = /^(?:\d{4}-)?(\d{1,2})-(\d{1,2})(?:t.*)?$/.exec(word);
  if (numbers) return dayOf(Number(numbers[1]), Number(numbers[2]));
  const dayFirst = /^(\d{1,2})(?:st|nd|rd|th|\.)?\s*([a-z]+)\.?$/.exec(word);
  if (dayFirst) return dayOf(monthOf(dayFirst[2]!), Number(dayFirst[1]));
  const monthFirst = /^([a-z]+)\.?\s*(\d{1,2})(?:st|nd|rd|th|\.)?$/.exec(word);
  return monthFirst ? dayOf(monthOf(monthFirst[1]!), Number(monthFirst[2])) : null;
}

/** 1 to 12 of an English name or its beginning, three letters at least; 0 for none. */
const monthOf = (word: string): number =>
  word.length < 3 ? 0 : MONTHS.findIndex((name) => name.toLowerCase().startsWith(word)) + 1;

function dayOf(month: number, day: number): string | null {
  const days = DAYS[month - 1];
  if (days === undefined || day < 1 || day > days) return null;
  return `${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

/** `04-01` as "1 Apr"; a text that is no such day stays as it is. */
export function monthDayWords(monthDay: string): string {
  const [month, day] = monthDay.split("-").map(Number);
  const name = MONTHS[(month ?? 0) - 1];
  return name === undefined ? monthDay : `${day} ${name.slice(0, 3)}`;
}
