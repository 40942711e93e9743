import type { Crs } from "@causey/engine/site";
import type { UnitSystem } from "@causey/engine/units";
import type { VectorLayer } from "@causey/io/layers";
import { ChoiceField } from "../../fields/choice-field.tsx";
import { YesField } from "../../fields/yes-field.tsx";
import { GivenField } from "./given-field.tsx";
import { fieldsOf, valuesInUse, type IdBy, type LayerChoice, type NameBy } from "./layer-choice.ts";
import { layerTargets, type LayerTarget } from "./layer-kinds.ts";
import { isOfShape, shapeWords } from "./layer-words.ts";
import { SystemFields } from "./system-fields.tsx";
import "./layer-import.css";

interface Props {
  readonly target: LayerTarget;
  readonly layer: VectorLayer;
  readonly crs: Crs;
  readonly choice: LayerChoice;
  readonly units: UnitSystem;
  readonly onTake: (choice: LayerChoice) => void;
}

/** What the layer does not say by itself: its system, and what each of its fields means. */
export function LayerFields({ target, layer, crs, choice, units, onTake }: Props) {
  const put = (some: Partial<LayerChoice>): void => onTake({ ...choice, ...some });
  const fields = fieldsOf(layer).map((field) => ({ value: `=${field}`, words: `the field "${field}"` }));
  const { noun, shape } = layerTargets[target];
  return (
    <div className="fields layer-fields">
      {layer.crs === null && (
        <SystemFields crs={crs} system={choice.system} onTake={(system) => put({ system })} />
      )}
      <ChoiceField
        label="Where from: Name"
        value={keyOf(choice.name)}
        choices={[
          { value: "", words: "choose" },
          ...fields,
          { value: "numbered", words: `none: "${layer.name} 1", "${layer.name} 2"` },
        ]}
        onTake={(key) => put({ name: key === "" ? null : nameOf(key) })}
      />
      <ChoiceField
        label="Where from: Id"
        description="By it each is known again when the file is brought in once more."
        value={keyOf(choice.id)}
        choices={[
          { value: "names", words: "the names" },
          { value: "file", words: "the file's own ids" },
          ...fields,
        ]}
        onTake={(key) => put({ id: idOf(key) })}
      />
      {valuesInUse(target, choice).map((wanted) => (
        <GivenField
          key={wanted.key}
          wanted={wanted}
          layer={layer}
          given={choice.values[wanted.key]!}
          units={units}
          onTake={(given) => put({ values: { ...choice.values, [wanted.key]: given } })}
        />
      ))}
      {layer.features.some((f) => !isOfShape(f, shape)) && (
        <YesField
          label={`Leave out what is no ${shape}`}
          description={`The layer holds ${shapeWords(layer)}.`}
          value={choice.leave_out}
          onTake={(leave_out) => put({ leave_out })}
        />
      )}
      <YesField
        label={`Replace each ${noun} whose id is there`}
        description="Everything known of it then comes from the file. The others stay as they are."
        value={choice.replace}
        onTake={(replace) => put({ replace })}
      />
    </div>
  );
}

/** A field stands behind "=", so that no field's name can be taken for one of our own words. */
const keyOf = (by: NameBy | IdBy): string =>
  by === null ? "" : typeof by === "object" ? `=${by.field}` : by;

const nameOf = (key: string): NameBy => (key === "numbered" ? key : { field: key.slice(1) });

const idOf = (key: string): IdBy => (key === "names" || key === "file" ? key : { field: key.slice(1) });
