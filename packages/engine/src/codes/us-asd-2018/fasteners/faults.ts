import { inputProblem, type Problem } from "../../../formula/index.ts";
import type { FastenerJoint } from "../../fastener-contract.ts";
import { angleFaults, jointFaults, missing, noRule } from "../../fastener-faults.ts";
import { isThick } from "./bearing.ts";

/** Everything that keeps this joint from being worked out by the American rules, all at once. */
export function usJointFaults(joint: FastenerJoint, way: "lateral" | "withdrawal"): Problem[] {
  const { fastener: f, side, main } = joint;
  const barred = noRule(joint);
  if (barred) return [barred];
  const problems = jointFaults(joint, way);
  if (f.diameter_mm > 25.4)
    problems.push(
      inputProblem(
        "diameter_mm",
        f.diameter_mm,
        "over 1 in: the rules end there",
        "Choose a thinner fastener.",
      ),
    );
  if (main.gravity === undefined)
    problems.push(missing("main_gravity", "Specific gravity of the main piece"));
  if (side.material === "wood" && side.gravity === undefined)
    problems.push(missing("side_gravity", "Specific gravity of the side piece"));
  if (way === "lateral" && isThick(f.diameter_mm / 1000))
    problems.push(...angleFaults(joint), ...(joint.per_row > 1 ? rowFaults(joint) : []));
  return problems;
}

const rowFaults = ({ row_spacing_m, side, main }: FastenerJoint): Problem[] => [
  ...(row_spacing_m === undefined ? [missing("row_spacing_mm", "Spacing of the fasteners in a row")] : []),
  ...(side.stiffness_n === undefined
    ? [missing("side_ea_n", "E A of the side piece, for rows of thick fasteners")]
    : []),
  ...(main.stiffness_n === undefined
    ? [missing("main_ea_n", "E A of the main piece, for rows of thick fasteners")]
    : []),
];
