import { inputProblem, type Problem } from "../formula/index.ts";
import type { FastenerJoint } from "./fastener-contract.ts";

export const missing = (key: string, what: string): Problem =>
  inputProblem(key, undefined, `${what} is missing`, `Give "${key}".`);

/** A kind of fastener for which no code has a rule; null when there are rules. */
export const noRule = ({ fastener: f }: FastenerJoint): Problem | null =>
  f.kind === "clip"
    ? inputProblem(
        "fastener",
        f.id,
        "has no rule: clips and staples must be tested",
        "Choose a nail, a wood screw or a lag screw.",
      )
    : null;

/** What is wrong with a joint under any code. Sizes of zero and below are refused before, field by field. */
export function jointFaults(joint: FastenerJoint, way: "lateral" | "withdrawal"): Problem[] {
  const { fastener: f, side, grain, toe_nail, shear } = joint;
  const problems: Problem[] = [];
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
  if (way === "lateral") {
    if (f.kind !== "nail" && f.root_mm === undefined)
      problems.push(missing("root_mm", "Diameter at the root of the thread"));
    if (f.fyb_psi === undefined && f.fu_mpa === undefined)
      problems.push(missing("fyb_mpa", "Bending yield of the fastener (or fu_mpa, the tensile strength)"));
    return problems;
  }
  if (f.kind !== "nail" && f.thread_mm === undefined)
    problems.push(missing("thread_mm", "Length of the thread"));
  if (shear === "double")
    problems.push(
      inputProblem("shear", shear, "withdrawal is worked out for one side piece", 'Give "single".'),
    );
  return problems;
}

/** Angles of the load to the grain, without which a thick fastener has no value. */
export function angleFaults({ side, main, grain }: FastenerJoint): Problem[] {
  const words = (piece: string): string =>
    `Angle of the load to the ${piece} piece's grain (thick fasteners)`;
  return [
    ...(grain === "side" && main.angle_deg === undefined ? [missing("main_angle_deg", words("main"))] : []),
    ...(side.material === "wood" && side.angle_deg === undefined
      ? [missing("side_angle_deg", words("side"))]
      : []),
  ];
}
