import fc from "fast-check";
import { expect, test } from "vitest";
import { monthDayWords, readMonthDay } from "./month-day.ts";

test("a day of the year is read as people write it", () => {
  const ways = ["04-01", "4-1", "1 Apr", "1. April", "1st april", "Apr 1", "April 1st", "2027-04-01"];
  expect(ways.map(readMonthDay)).toEqual(ways.map(() => "04-01"));
  expect(readMonthDay("2027-04-01T00:00:00Z")).toBe("04-01");
  expect(readMonthDay("29 Feb")).toBe("02-29");
});

test("what is no day, or may be two, is not taken", () => {
  const none = ["", "1/4", "01.04.", "30 Feb", "31 Apr", "0 Apr", "13-01", "1 Foo", "1 Ju", "April"];
  expect(none.map(readMonthDay)).toEqual(none.map(() => null));
});

test("words and numbers say the same day", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 365 }), (n) => {
      const day = new Date(Date.UTC(2028, 0, 1 + n)).toISOString().slice(5, 10);
      expect(readMonthDay(monthDayWords(day))).toBe(day);
      expect(readMonthDay(day)).toBe(day);
    }),
  );
});
