import { KG_PER_LB, type UnitSystem } from "@causey/engine/units";
import { NumberField } from "./number-field.tsx";

interface Props {
  readonly label: string;
  readonly units: UnitSystem;
  /** [kg] */
  readonly value: number;
  readonly onTake: (kg: number) => void;
  readonly description?: string;
}

/** A mass in pounds or kilograms. */
export const MassField = ({ label, units, value, onTake, description }: Props) => (
  <NumberField
    label={label}
    unit={units === "us" ? "lb" : "kg"}
    scale={units === "us" ? 1 / KG_PER_LB : 1}
    decimals={2}
    least={0}
    value={value}
    onTake={onTake}
    {...(description === undefined ? {} : { description })}
  />
);
