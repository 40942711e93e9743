import { inputProblem, type Problem } from "../../../formula/index.ts";
import type { FastenerJoint } from "../../fastener-contract.ts";
import { angleFaults, jointFaults, missing, noRule } from "../../fastener-faults.ts";
import { isThick } from "./dowel.ts";

/** Everything that keeps this joint from being worked out by the European rules, all at once. */
export function ec5JointFaults(joint: FastenerJoint, way: "lateral" | "withdrawal"): Problem[] {
  const { fastener: f, side, main } = joint;
  const barred = noRule(joint);
  if (barred) return [barred];
  const problems = jointFaults(joint, way);
  if (f.diameter_mm > 24)
    problems.push(
      inputProblem(
        "diameter_mm",
        f.diameter_mm,
        "over 24 mm: the rules end there",
        "Choose a thinner fastener.",
      ),
    );
  if (main.density_k === undefined)
    problems.push(missing("main_density_kg_m3", "Characteristic density of the main piece"));
  if (side.material === "wood" && side.density_k === undefined)
    problems.push(missing("side_density_kg_m3", "Characteristic density of the side piece"));
  return way === "lateral" ? [...problems, ...acrossFaults(joint)] : problems;
}

const acrossFaults = (joint: FastenerJoint): Problem[] => [
  ...boredFaults(joint),
  ...(joint.per_row > 1 ? rowFaults(joint) : []),
  ...(isThick(joint.fastener) ? angleFaults(joint) : []),
];

function boredFaults({ fastener: f, predrilled }: FastenerJoint): Problem[] {
  if (predrilled === undefined) return [missing("predrilled", "Whether the holes are bored first")];
  if (predrilled || f.diameter_mm <= 6) return [];
  const mend = "Bore first, or choose a thinner fastener.";
  return [inputProblem("predrilled", false, "fasteners over 6 mm must be bored for", mend)];
}

function rowFaults({ fastener: f, row_spacing_m, predrilled }: FastenerJoint): Problem[] {
  if (row_spacing_m === undefined) return [missing("row_spacing_mm", "Spacing of the fasteners in a row")];
  const least = predrilled === true || f.diameter_mm > 6 ? 4 : 7;
  if (row_spacing_m * 1000 >= least * f.diameter_mm - 1e-9) return [];
  const mend = `Set them at least ${(least * f.diameter_mm).toFixed(0)} mm apart.`;
  return [inputProblem("row_spacing_mm", row_spacing_m * 1000, `closer than ${least} diameters`, mend)];
}
