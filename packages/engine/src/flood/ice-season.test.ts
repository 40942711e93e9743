import { expect, test } from "vitest";
import { iceVerdict, isDay } from "./ice-season.ts";

const winter = [12, 1, 2];

test("a summer walkway is clear of the ice, and no ice is no question", () => {
  expect(iceVerdict({ from: "2027-04-01", to: "2027-11-30" }, winter, null).status).toBe("clear");
  expect(iceVerdict({ from: "2027-04-01", to: "2028-11-30" }, [], null).status).toBe("clear");
});

test("what stands into the ice is lifted out by the day before, across the year's end and in a leap year", () => {
  expect(iceVerdict({ from: "2027-04-01", to: "2028-03-31" }, winter, true)).toMatchObject({
    status: "lift-out",
    by: "2027-11-30",
  });
  expect(iceVerdict({ from: "2027-11-05", to: "2028-01-31" }, [1], true)).toMatchObject({ by: "2027-12-31" });
  expect(iceVerdict({ from: "2028-02-10", to: "2028-03-31" }, [3], true)).toMatchObject({ by: "2028-02-29" });
  expect(iceVerdict({ from: "2027-02-10", to: "2027-03-31" }, [3], true)).toMatchObject({ by: "2027-02-28" });
});

test("what stays, or is laid in a month with ice, is frozen in and fails", () => {
  const stay = iceVerdict({ from: "2027-04-01", to: "2028-03-31" }, winter, false);
  expect(stay).toMatchObject({ status: "frozen-in", from: "2027-12-01" });
  expect(stay.words).toContain("fails");
  expect(iceVerdict({ from: "2027-01-15", to: "2027-06-30" }, winter, true)).toMatchObject({
    status: "frozen-in",
    from: "2027-01-15",
  });
});

test("what is not known is said, all of it", () => {
  expect(iceVerdict(null, null, null).words).toBe(
    "Cannot be checked: missing the days from which and to which it stands, and the months with ice at this site.",
  );
  expect(iceVerdict({ from: "2027-04-01", to: "2028-03-31" }, winter, null).words).toContain("lifted out");
});

test("a day is one of the calendar", () => {
  expect(["2027-05-31", "2028-02-29", "2000-02-29"].every(isDay)).toBe(true);
  expect(
    ["2027-02-29", "1900-02-29", "2027-04-31", "2027-13-01", "31.5.2027", "2027-00-10"].some(isDay),
  ).toBe(false);
});
