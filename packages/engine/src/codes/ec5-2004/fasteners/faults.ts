import { inputProblem, type Problem } from "../../../formula/index.ts";
import type { FastenerJoint } from "../../fastener-contract.ts";
import { isThick } from "./dowel.ts";

const missing = (key: string, what: string): Problem =>
  inputProblem(key, undefined, `${what} is missing`, `Give "${key}".`);

/** Everything that keeps this joint from being worked out by the European rules, all at once. */
export function ec5JointFaults(joint: FastenerJoint, way: "lateral" | "withdrawal"): Problem[] {
  const { fastener: f, side, main, grain, toe_nail, shear } = joint;
  const problems: Problem[] = [];
  if (f.kind === "clip")
    problems.push(
      inputProblem(
        "fastener",
        f.id,
        "has no rule: clips and staples must be tested",
        "Choose a nail or a screw.",
      ),
    );
  if (f.diameter_mm > 24)
    problems.push(
      inputProblem(
        "diameter_mm",
        f.diameter_mm,
        "over 24 mm: the rules end there",
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
  if (main.density_k === undefined)
    problems.push(missing("main_density_kg_m3", "Characteristic density of the main piece"));
  if (side.material === "wood" && side.density_k === undefined)
    problems.push(missing("side_density_kg_m3", "Characteristic density of the side piece"));
  return [...problems, ...(way === "lateral" ? lateralFaults(joint) : withdrawalFaults(joint))];
}

function lateralFaults(joint: FastenerJoint): Problem[] {
  const { fastener: f, side, main, predrilled } = joint;
  const problems: Problem[] = [];
  if (f.kind !== "nail" && f.root_mm === undefined)
    problems.push(missing("root_mm", "Diameter at the root of the thread"));
  if (f.fu_mpa === undefined && f.fyb_psi === undefined)
    problems.push(missing("fu_mpa", "Tensile strength of the fastener's steel"));
  if (predrilled === undefined) problems.push(missing("predrilled", "Whether the holes are bored first"));
  if (predrilled === false && f.diameter_mm > 6)
    problems.push(
      inputProblem(
        "predrilled",
        false,
        "fasteners over 6 mm must be bored for",
        "Bore first, or choose a thinner fastener.",
      ),
    );
  if (joint.per_row > 1) problems.push(...rowFaults(joint));
  if (!isThick(f)) return problems;
  if (main.angle_deg === undefined)
    problems.push(missing("main_angle_deg", "Angle of the load to the main piece's grain (thick fasteners)"));
  if (side.material === "wood" && side.angle_deg === undefined)
    problems.push(missing("side_angle_deg", "Angle of the load to the side piece's grain (thick fasteners)"));
  return problems;
}

function rowFaults({ fastener: f, row_spacing_m, predrilled }: FastenerJoint): Problem[] {
  if (row_spacing_m === undefined) return [missing("row_spacing_mm", "Spacing of the fasteners in a row")];
  const least = predrilled === true || f.diameter_mm > 6 ? 4 : 7;
  if (row_spacing_m * 1000 >= least * f.diameter_mm - 1e-9) return [];
  const mm = (least * f.diameter_mm).toFixed(0);
  return [
    inputProblem(
      "row_spacing_mm",
      row_spacing_m * 1000,
      `closer than ${least} diameters`,
      `Set them at least ${mm} mm apart.`,
    ),
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
