import type { Json } from "@causey/engine/formula";
import type { ZoneUse } from "@causey/engine/site";
import type { UnitSystem } from "@causey/engine/units";
import type { VectorLayer } from "@causey/io/layers";
import { ChoiceField } from "../../fields/choice-field.tsx";
import { LengthField } from "../../fields/length-field.tsx";
import { MonthDayField } from "../../fields/month-day-field.tsx";
import { NumberField } from "../../fields/number-field.tsx";
import { TextField } from "../../fields/text-field.tsx";
import { YesField } from "../../fields/yes-field.tsx";
import { zoneUseWords } from "../../map/zone-style.ts";
import { byField, fieldsOf, type GivenBy } from "./layer-choice.ts";
import type { WantedValue } from "./layer-kinds.ts";

interface Props {
  readonly wanted: WantedValue;
  readonly layer: VectorLayer;
  readonly given: GivenBy;
  readonly units: UnitSystem;
  readonly onTake: (given: GivenBy) => void;
}

const rules = Object.entries(zoneUseWords).map(([value, words]) => ({ value, words }));
const sides = ["north", "east", "south", "west"].map((value) => ({ value, words: `the ${value}` }));
const NO_FIELD = "";

/** One value: from where it comes, and the value itself or the meaning of the field's words. */
export function GivenField({ wanted, layer, given, units, onTake }: Props) {
  return (
    <div className="fields-wide layer-pair">
      <ChoiceField
        label={`Where from: ${wanted.label}`}
        value={given.by === "field" ? `=${given.field}` : NO_FIELD}
        choices={[
          { value: NO_FIELD, words: "one value for all" },
          ...fieldsOf(layer).map((field) => ({ value: `=${field}`, words: `the field "${field}"` })),
        ]}
        onTake={(word) =>
          onTake(
            word === NO_FIELD
              ? { by: "all", value: wanted.as === "yes" ? false : null }
              : byField(layer, word.slice(1), wanted.as),
          )
        }
      />
      {given.by === "all" ? (
        <OneForAll
          wanted={wanted}
          value={given.value}
          units={units}
          onTake={(value) => onTake({ by: "all", value })}
        />
      ) : wanted.as === "use" ? (
        <WordFields given={given} onTake={onTake} />
      ) : (
        <p className="quiet">{wanted.description}</p>
      )}
    </div>
  );
}

interface OneProps {
  readonly wanted: WantedValue;
  readonly value: Json;
  readonly units: UnitSystem;
  readonly onTake: (value: Json) => void;
}

function OneForAll({ wanted, value, units, onTake }: OneProps) {
  const { label, description, as, required = false } = wanted;
  const words = { label, ...(description === undefined ? {} : { description }) };
  switch (as) {
    case "use":
    case "side":
      return (
        <ChoiceField
          {...words}
          value={(value ?? "") as string}
          choices={[
            { value: "", words: as === "use" ? "choose" : "any side" },
            ...(as === "use" ? rules : sides),
          ]}
          onTake={(word) => onTake(word === "" ? null : word)}
        />
      );
    case "yes":
      return <YesField {...words} value={value === true} onTake={onTake} />;
    case "number":
      return <NumberField {...words} optional least={0} value={value as number | null} onTake={onTake} />;
    case "length":
      return (
        <LengthField
          {...words}
          optional
          units={units}
          least_m={0}
          value={value as number | null}
          onTake={onTake}
        />
      );
    case "month-day":
      return <MonthDayField {...words} value={(value ?? "") as string} onTake={onTake} />;
    default:
      return (
        <TextField {...words} live required={required} value={(value ?? "") as string} onTake={onTake} />
      );
  }
}

const WordFields = ({
  given,
  onTake,
}: {
  readonly given: GivenBy & { readonly by: "field" };
  readonly onTake: (given: GivenBy) => void;
}) => (
  <>
    {Object.entries(given.words).map(([word, use]) => (
      <ChoiceField
        key={word}
        label={`"${word}" means`}
        value={use ?? ""}
        choices={[{ value: "", words: "choose" }, ...rules]}
        onTake={(to) =>
          onTake({ ...given, words: { ...given.words, [word]: to === "" ? null : (to as ZoneUse) } })
        }
      />
    ))}
  </>
);
