import { describe, expect, test } from "vitest";
import { straightLayout } from "../../test/support/straight-walkway.ts";
import type { WaterLevel } from "../water/index.ts";
import { deckLevelCautions, deckLevelFigures, type DeckLevelsInput } from "./deck-levels.ts";

const level = (id: string, role: WaterLevel["role"], z_m: number, datum = "mark"): WaterLevel => ({
  id,
  name: id,
  role,
  basis: role === "highest-predicted" ? "predicted" : "mean",
  z_m,
  datum,
  source: "invented",
  epoch: "2002 to 2020",
});

/** Three modules of 4 m, gaps left out, decks at these heights. */
function walkway(decks: readonly number[], levels: readonly WaterLevel[]): DeckLevelsInput {
  const layout = straightLayout([4, 4, 4]);
  const joints = layout.joints.map((j, i) => ({ ...j, deck_m: decks[i]! }));
  return { layout: { ...layout, joints }, gap_m: 0, levels, datum: "mark", units: "metric" };
}

const MHW = level("Mean high water", "mhw", 1.9);

describe("deck and high water", () => {
  test("a pit between dry ends, by hand: 2.3 to 1.5 goes under 1.9 half way, 1.5 lies under, 1.5 to 2.7 a third", () => {
    const pit = walkway([2.3, 1.5, 1.5, 2.7], [MHW]);
    const [figure] = deckLevelFigures(pit);
    expect(figure!.value).toBeCloseTo(2 + 4 + 4 / 3, 12);
    expect(figure!.working.at(-1)!.value).toBeCloseTo(figure!.value, 12);
    expect(figure!.note).toContain("1.50 m at joint J1");
    expect(deckLevelCautions(pit)).toEqual([
      expect.stringMatching(
        /^7\.33 m of the deck's 12(\.0+)? m lie below "Mean high water" \(1\.9\d* m\).*joint J1\./,
      ),
    ]);
  });

  test("who does not accept wet feet is told of it, with the height that is wanting at the lowest place", () => {
    // Lowest deck 1.6 m under a level of 1.9 m: 0.3 m short.
    const pit = walkway([2, 1.6, 2, 2], [MHW]);
    const [refused] = deckLevelCautions({ ...pit, wet_feet_ok: false });
    expect(refused).toMatch(/The request does not accept wet feet, yet people would walk in water there/);
    expect(refused).toMatch(/the deck is 300 mm short/);
    for (const wet_feet_ok of [true, null])
      expect(deckLevelCautions({ ...pit, wet_feet_ok })[0]).not.toContain("request");
  });

  test("the whole deck under the highest predicted tide is one sentence, and ordinary high water keeps silent", () => {
    const low = walkway([2, 2, 2, 2], [MHW, level("Highest tide", "highest-predicted", 2.4)]);
    expect(deckLevelCautions(low)).toEqual([
      expect.stringMatching(/^The whole deck, 12.*below "Highest tide"/),
    ]);
  });

  test("a dry deck says nothing; a deck at the very level is dry", () => {
    expect(deckLevelCautions(walkway([1.9, 1.9, 1.9, 1.9], [MHW]))).toEqual([]);
    expect(deckLevelFigures(walkway([1.9, 2, 2, 2], [MHW]))[0]!.value).toBe(0);
  });

  test("a level on another datum is not held against the deck, and that is said", () => {
    const elsewhere = walkway([1, 1, 1, 1], [level("Mean high water", "mhw", 1.9, "chart")]);
    expect(deckLevelCautions(elsewhere)).toEqual([expect.stringContaining("cannot be told")]);
    expect(deckLevelFigures(elsewhere)).toEqual([]);
  });

  test("no walkway, no words", () => {
    const none = { ...walkway([1, 1, 1, 1], [MHW]), layout: straightLayout([]) };
    expect(deckLevelCautions(none)).toEqual([]);
    expect(deckLevelFigures(none)).toEqual([]);
  });
});
