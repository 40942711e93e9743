import { sameLength } from "./cross-places.ts";
import { say, type Faults } from "./faults.ts";

/** Steeper than this a ramp is a ladder; ramps of wet boards are kept far flatter. A decision of this project. */
const STEEPEST = 0.5;
/** A ramp this steep wants a hand rail or an engineer's word: 1 in 6; a decision of this project. */
const STEEP = 1 / 6;

/** The ramp's own numbers; whether its deck can be laid is asked with the modules' deck. */
export function rampFaults(f: Faults): void {
  const { ramp } = f.kit;
  if (!ramp) return;
  if (ramp.lengths_mm.length === 0)
    f.add("ramp", "ramp.lengths_mm", ramp.lengths_mm, "the ramp has no length", "Give at least one length.");
  ramp.lengths_mm.forEach((l, i) => {
    f.positive(`ramp.lengths_mm[${i}]`, l, "a ramp length");
    const before = ramp.lengths_mm[i - 1];
    if (before !== undefined && (l < before || sameLength(l, before)))
      f.add(
        "ramp",
        `ramp.lengths_mm[${i}]`,
        l,
        `ramp lengths go from short to long, and ${say(before)} stands before ${say(l)}`,
        "Sort them, each once.",
      );
  });
  if (!f.positive("ramp.max_grade", ramp.max_grade, "the steepest grade", STEEPEST)) return;
  if (ramp.max_grade > STEEP)
    f.add(
      "ramp",
      "ramp.max_grade",
      ramp.max_grade,
      `a ramp of 1 in ${(1 / ramp.max_grade).toFixed(1)} is steep for wet feet and for a cart`,
      "Lay it at 1 in 8 or flatter where you can.",
      "warning",
    );
}
