import { inputProblem, type Problem } from "../../../formula/index.ts";
import type { FastenerJoint, WoodPiece } from "../../fastener-contract.ts";
import { isThick } from "./bearing.ts";

const missing = (key: string, what: string): Problem =>
  inputProblem(key, undefined, `${what} is missing`, `Give "${key}".`);

/** Everything that keeps this joint from being worked out by the American rules, all at once. */
export function usJointFaults(joint: FastenerJoint, way: "lateral" | "withdrawal"): Problem[] {
  const { fastener: f, side, main, grain, toe_nail, shear } = joint;
  const problems: Problem[] = [];
  if (f.kind === "clip")
    problems.push(
      inputProblem(
        "fastener",
        f.id,
        "has no rule: clips and staples must be tested",
        "Choose a nail, a wood screw or a lag screw.",
      ),
    );
  if (f.diameter_mm > 25.4)
    problems.push(
      inputProblem(
        "diameter_mm",
        f.diameter_mm,
        "over 1 in: the rules end there",
        "Choose a thinner fastener.",
      ),
    );
  if (joint.per_row > joint.count)
    problems.push(
      inputProblem("per_row", joint.per_row, "more in one row than there are", "Give at most the count."),
    );
  if (toe_nail && (f.kind !== "nail" || shear === "double" || grain === "end" || side.material === "steel"))
    problems.push(
      inputProblem(
        "toe_nail",
        true,
        "toe-nailing is for nails through one wooden side piece into side grain",
        "Set toe_nail to false.",
      ),
    );
  if (main.gravity === undefined)
    problems.push(missing("main_gravity", "Specific gravity of the main piece"));
  if (side.material === "wood" && side.gravity === undefined)
    problems.push(missing("side_gravity", "Specific gravity of the side piece"));
  return [...problems, ...(way === "lateral" ? lateralFaults(joint) : withdrawalFaults(joint))];
}

function lateralFaults(joint: FastenerJoint): Problem[] {
  const { fastener: f, side, main, grain, per_row } = joint;
  const problems: Problem[] = [];
  if (f.kind !== "nail" && f.root_mm === undefined)
    problems.push(missing("root_mm", "Diameter at the root of the thread"));
  if (f.fyb_psi === undefined && f.fu_mpa === undefined)
    problems.push(missing("fyb_mpa", "Bending yield of the fastener"));
  if (!isThick(f.diameter_mm / 1000)) return problems;
  if (grain === "side" && main.angle_deg === undefined)
    problems.push(
      missing("main_angle_deg", "Angle of the load to the main piece's grain (fasteners of 1/4 in and more)"),
    );
  if (side.material === "wood" && side.angle_deg === undefined)
    problems.push(
      missing("side_angle_deg", "Angle of the load to the side piece's grain (fasteners of 1/4 in and more)"),
    );
  if (per_row > 1) problems.push(...rowFaults(joint.row_spacing_m, side, main));
  return problems;
}

function rowFaults(spacing: number | undefined, side: FastenerJoint["side"], main: WoodPiece): Problem[] {
  return [
    ...(spacing === undefined ? [missing("row_spacing_mm", "Spacing of the fasteners in a row")] : []),
    ...(side.stiffness_n === undefined
      ? [missing("side_ea_n", "E A of the side piece, for rows of thick fasteners")]
      : []),
    ...(main.stiffness_n === undefined
      ? [missing("main_ea_n", "E A of the main piece, for rows of thick fasteners")]
      : []),
  ];
}

const withdrawalFaults = ({ fastener: f, shear }: FastenerJoint): Problem[] => [
  ...(f.kind !== "nail" && f.kind !== "clip" && f.thread_mm === undefined
    ? [missing("thread_mm", "Length of the thread")]
    : []),
  ...(shear === "double"
    ? [inputProblem("shear", shear, "withdrawal is worked out for one side piece", 'Give "single".')]
    : []),
];
