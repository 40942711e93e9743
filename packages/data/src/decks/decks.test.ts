import { readyKits } from "../kits/index.ts";
import { PANEL_KINDS, readKit, validateKit, type Kit } from "@causey/engine/kit";
import { expect, test } from "vitest";
import { tables } from "../tables/index.ts";
import { deckChoice, deckChoices, deckOf } from "./index.ts";

test("every kind of deck is offered, each id once, none under a maker's name, each with a word on its numbers", () => {
  const kinds = new Set(deckChoices.map((d) => d.deck.kind));
  for (const kind of ["boards", ...PANEL_KINDS] as const) expect(kinds).toContain(kind);
  expect(new Set(deckChoices.map((d) => d.id)).size).toBe(deckChoices.length);
  for (const d of deckChoices) {
    expect(d.note.length, d.id).toBeGreaterThan(20);
    if ("strength" in d.deck) expect(d.deck.strength.source, d.id).not.toBe("");
    if (d.status !== "memory" && "strength" in d.deck) expect(d.deck.strength.status).not.toBe("memory");
  }
  expect(deckChoice("gold")).toBeUndefined();
});

test("a deck of the list makes a kit that the reader takes, with a fastener of the tables", () => {
  const base = readyKits.find((k) => k.id === "fen-panels")!;
  for (const choice of deckChoices) {
    const kit: Kit = { ...base, deck: deckOf(choice, 762) };
    expect(readKit(JSON.parse(JSON.stringify(kit))), choice.id).toHaveProperty("kit");
    const faults = validateKit(kit, tables).filter((p) => p.place.startsWith("kit.deck"));
    expect(faults, choice.id).toEqual([]);
  }
});

test("steel bars of 1 x 3/16 in carry what their load table says of a 4 ft span: 474 lb on a foot of width", () => {
  const { deck } = deckChoice("steel-bar-25")!;
  if (!("strength" in deck)) throw new Error("no panel");
  const line = (4 * deck.strength.moment_n) / (4 * 0.3048);
  expect(Math.abs((line * 0.3048) / 4.4482216152605 - 474)).toBeLessThan(1.5);
});

test("open shares follow from bars and openings, within a tenth", () => {
  for (const id of ["moulded-38", "moulded-25"]) {
    const { deck } = deckChoice(id)!;
    if (!("opening_along_mm" in deck)) throw new Error("no panel");
    const share = (deck.opening_along_mm / 38.1) * (deck.opening_across_mm / 38.1);
    expect(Math.abs(share - deck.open_share)).toBeLessThan(0.1);
  }
});
