import type { UsedTimberGrade } from "@causey/engine/materials";

const grade = (
  id: string,
  name: string,
  [face_loss_mm, face_loss_per_cycle_mm, strength_share]: readonly [number, number, number],
  hole: string,
  sort: string,
): UsedTimberGrade => ({
  id,
  name,
  face_loss_mm,
  face_loss_per_cycle_mm,
  strength_share,
  hole,
  sort,
  source: "causey-used-timber",
  status: "project",
});

/** Timber that has lain out before, sorted by hand and an awl. Worse than the last row is not used again. */
export const usedTimber: readonly UsedTimberGrade[] = [
  grade(
    "sound",
    "Sound, laid for a season or two",
    [0.5, 0.25, 0.9],
    "reused",
    "an awl goes in no deeper than in new wood; edges sharp, no split longer than the piece is wide, screws bite again",
  ),
  grade(
    "weathered",
    "Weathered, laid for some years",
    [1.5, 0.5, 0.75],
    "reused",
    "grey and rough, an awl goes in up to 2 mm; splits at the ends no longer than twice the width, screws bite in most holes",
  ),
  grade(
    "worn",
    "Worn, near its end",
    [3, 1, 0.6],
    "stripped",
    "an awl goes in up to 4 mm, edges rounded, screws turn freely in many holes; anything softer is firewood",
  ),
];
