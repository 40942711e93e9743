import type { Crs } from "@causey/engine/site";
import { crsName } from "@causey/io/crs";
import { ChoiceField } from "../../fields/choice-field.tsx";
import { NumberField } from "../../fields/number-field.tsx";
import type { SystemBy } from "./layer-choice.ts";

interface Props {
  readonly crs: Crs;
  readonly system: SystemBy;
  readonly onTake: (system: SystemBy) => void;
}

type Word = "" | "site" | "lon-lat" | "epsg";

const wordOf = (system: SystemBy): Word =>
  system === null ? "" : typeof system === "object" ? "epsg" : system;

/** Asks in which system a layer is, where its file does not say it. Nothing is chosen beforehand. */
export function SystemFields({ crs, system, onTake }: Props) {
  const elsewhere: readonly { readonly value: Word; readonly words: string }[] =
    crs.kind === "local"
      ? []
      : [
          { value: "lon-lat", words: "longitude and latitude (WGS 84)" },
          { value: "epsg", words: "a system by its EPSG code" },
        ];
  const take = (word: Word): void => onTake(word === "" ? null : word === "epsg" ? { epsg: null } : word);
  return (
    <>
      <ChoiceField<Word>
        label="Its coordinates are in"
        description={
          crs.kind === "local"
            ? "The file does not say it. A local grid has no known place on the earth, so only its own coordinates fit."
            : "The file does not say it."
        }
        value={wordOf(system)}
        choices={[
          { value: "", words: "choose" },
          { value: "site", words: `the site's own grid (${crsName(crs)})` },
          ...elsewhere,
        ]}
        onTake={take}
      />
      {typeof system === "object" && system !== null && (
        <NumberField
          label="EPSG code"
          optional
          whole
          least={1}
          value={system.epsg}
          onTake={(epsg) => onTake({ epsg })}
        />
      )}
    </>
  );
}
