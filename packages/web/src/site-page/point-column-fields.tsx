import type { TerrainChoice } from "@causey/engine/plan";
import type { PointColumns } from "@causey/engine/survey";
import { ChoiceField } from "../fields/choice-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { dateOrderChoices, decimalChoices } from "../fields/written-choices.ts";

type Points = Extract<TerrainChoice, { readonly kind: "points" }>;

const needed = [
  ["x", "Column of the eastings"],
  ["y", "Column of the northings"],
  ["z", "Column of the heights"],
] as const;
const optional = [
  ["id", "Column of the point names"],
  ["code", "Column of the codes"],
  ["accuracy", "Column of the accuracy"],
  ["date", "Column of the days"],
] as const;

/** Which column of a file of points means what. */
export function PointColumnFields({
  terrain,
  onTake,
}: {
  readonly terrain: Points;
  readonly onTake: (terrain: Points) => void;
}) {
  const put = (key: keyof PointColumns, name: string | null): void =>
    onTake({ ...terrain, columns: { ...terrain.columns, [key]: name } });
  return (
    <div className="fields">
      {needed.map(([key, label]) => (
        <TextField
          key={key}
          required
          label={label}
          value={terrain.columns[key]}
          onTake={(name) => put(key, name)}
        />
      ))}
      {optional.map(([key, label]) => (
        <TextField
          key={key}
          label={label}
          description="Empty: there is none."
          value={terrain.columns[key] ?? ""}
          onTake={(name) => put(key, name === "" ? null : name)}
        />
      ))}
      <ChoiceField
        label="Decimals are written with"
        value={terrain.decimal}
        choices={decimalChoices}
        onTake={(decimal) => onTake({ ...terrain, decimal })}
      />
      <ChoiceField
        label="Days are written as"
        value={terrain.date_order}
        choices={dateOrderChoices}
        onTake={(date_order) => onTake({ ...terrain, date_order })}
      />
    </div>
  );
}
