// Bars: management of small docks and piers (public slides): no creosote or penta, CCA to be limited; FEMA P-499: copper
// treatments want hot-dip zinc or stainless; stainless near salt from memory.
import { expect, test } from "vitest";
import type { Fastener, Preservative } from "../materials/index.ts";
import { fastenerChoices, preservativeChoices } from "./material-choices.ts";

const row = (id: string, some: Partial<Preservative> = {}): Preservative => ({
  id,
  name: id.toUpperCase(),
  has_copper: false,
  has_arsenic: false,
  salt_use: "yes",
  restricted: false,
  note: "a note",
  source: "test",
  status: "practice",
  ...some,
});
const preservatives = [
  row("acza", { has_copper: true, has_arsenic: true, salt_use: "marine-retention" }),
  row("penta", { restricted: true, note: "not for small docks" }),
  row("acq", { has_copper: true, salt_use: "no" }),
  row("plain"),
];
const screw = (id: string, coating: Fastener["coating"]): Fastener => ({
  id,
  name: id,
  kind: "wood-screw",
  length_mm: 76,
  diameter_mm: 4.8,
  coating,
  source: "test",
  status: "practice",
});
const screws = [screw("zinc", "plain-zinc"), screw("dip", "hot-dip-zinc"), screw("v2a", "stainless-304")];

test("the least treatment stands first, the barred last and with its reason", () => {
  expect(preservativeChoices(preservatives, "fresh").map((c) => [c.id, c.barred])).toEqual([
    ["plain", null],
    ["acq", null],
    ["acza", null],
    ["penta", "not for small docks"],
  ]);
});

test("what does not stand salt water is barred there alone; marine retention is said", () => {
  const salt = preservativeChoices(preservatives, "salt");
  expect(salt.find((c) => c.id === "acq")!.barred).toBe("not for timber in salt water");
  expect(salt.find((c) => c.id === "acza")).toMatchObject({ barred: null });
  expect(salt.find((c) => c.id === "acza")!.note).toContain("marine retention");
});

test("plain zinc is barred with copper, 304 near salt, and unknown treatment is only minded", () => {
  const of = (preservative: string | null, exposure: "fresh" | "salt") =>
    fastenerChoices(
      screws,
      "wood-screw",
      { species: "", grade: "", treatment: "treated", incised: false, preservative },
      preservatives,
      exposure,
    );
  expect(of("acq", "fresh").map((c) => c.barred)).toEqual(["copper in ACQ eats it", null, null]);
  expect(of("plain", "salt").map((c) => c.barred)).toEqual([
    "salt water eats it",
    null,
    "salt water eats it",
  ]);
  expect(of(null, "fresh")[0]).toMatchObject({ barred: null });
  expect(of(null, "fresh")[0]!.note).toContain("find out");
});
