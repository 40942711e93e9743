import { Button, FileButton } from "@mantine/core";
import type { SeriesFile } from "@causey/engine/water";
import type { PlanSnapshot } from "../api/types.ts";
import { ChoiceField } from "../fields/choice-field.tsx";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { ProblemList } from "../frame/problem-list.tsx";
import { useLayFile } from "../site-page/use-lay-file.ts";

interface Props {
  readonly snapshot: PlanSnapshot;
  /** The series that everything is counted from, or the one that it is compared with. */
  readonly which: "series" | "compare";
}

const WORDS = {
  series: {
    title: "Record or tide table",
    note: "A gauge's or a logger's CSV, or a table of high and low waters. Gaps are left out, never bridged.",
    none: "No file: hours under water cannot be told.",
  },
  compare: {
    title: "Compared with",
    note: "A prediction for a record, or a record for a prediction, of the same months: shows how far wind and rain lift the water over the tide table.",
    none: "No file: how far the tide departs from its prediction is not known.",
  },
} as const;

/** A record or a tide table: the one that the hours under water are counted from, or the one beside it. */
export function SeriesFields({ snapshot, which }: Props) {
  const { plan } = snapshot;
  const { value: water, change } = useSection(plan, "water");
  const file = useLayFile(snapshot.id);
  const series = water[which] ?? null;
  const words = WORDS[which];
  const set = (to: SeriesFile | null): void => change(which === "series" ? { series: to } : { compare: to });
  const put = (some: Partial<SeriesFile>): void => {
    if (series) set({ ...series, ...some });
  };
  return (
    <FieldGroup title={words.title} note={words.note}>
      <div className="file-row">
        {series ? (
          <span>
            File: <b>{series.file}</b>
          </span>
        ) : (
          <span className="quiet">{words.none}</span>
        )}
        <FileButton
          accept=".csv,.txt"
          onChange={(chosen) => {
            if (chosen)
              void file.lay(chosen, (entry) => {
                const fresh = freshSeries(plan.vertical_datum, which, water.series);
                set({ ...(series ?? fresh), file: entry.name });
              });
          }}
        >
          {(props) => (
            <Button {...props} variant="default" size="compact-sm" loading={file.isSending}>
              {series ? "Take another file" : "Choose a file"}
            </Button>
          )}
        </FileButton>
        {series && (
          <Button variant="default" size="compact-sm" onClick={() => set(null)}>
            Leave it out
          </Button>
        )}
      </div>
      <div aria-live="polite">
        {file.broken !== null && <p className="plans-broken">{file.broken}</p>}
        {file.problems.length > 0 && <ProblemList problems={file.problems} />}
      </div>
      {series && <SeriesForm series={series} units={plan.units} onTake={put} />}
    </FieldGroup>
  );
}

interface FormProps {
  readonly series: SeriesFile;
  readonly units: "us" | "metric";
  readonly onTake: (some: Partial<SeriesFile>) => void;
}

function SeriesForm({ series, units, onTake }: FormProps) {
  const columns = (some: Partial<SeriesFile["columns"]>): void =>
    onTake({ columns: { ...series.columns, ...some } });
  return (
    <div className="fields">
      <ChoiceField
        label="The file holds"
        value={series.kind}
        choices={[
          { value: "readings", words: "readings, one after another" },
          { value: "high-low", words: "high and low waters" },
        ]}
        onTake={(kind) => onTake({ kind })}
      />
      <ChoiceField
        label="They are"
        value={series.basis}
        choices={[
          { value: "recorded", words: "recorded" },
          { value: "predicted", words: "predicted, no wind" },
        ]}
        onTake={(basis) => onTake({ basis })}
      />
      <TextField
        required
        label="Column of the times"
        value={series.columns.time}
        onTake={(time) => columns({ time })}
      />
      <TextField
        required
        label="Column of the levels"
        value={series.columns.level}
        onTake={(level) => columns({ level })}
      />
      <TextField
        label="Column of the flags"
        description="Empty: there is none."
        value={series.columns.flag ?? ""}
        onTake={(flag) => columns({ flag: flag === "" ? null : flag })}
      />
      <ChoiceField
        label="Levels in the file are in"
        value={series.unit}
        choices={[
          { value: "m", words: "metres" },
          { value: "ft", words: "feet" },
        ]}
        onTake={(unit) => onTake({ unit })}
      />
      <TextField
        required
        label="Zone of its times"
        description='"UTC", "-05:00", or a place such as "Europe/Lisbon".'
        value={series.zone}
        onTake={(zone) => onTake({ zone })}
      />
      <TextField
        required
        label="Datum of its levels"
        value={series.datum}
        onTake={(datum) => onTake({ datum })}
      />
      <LengthField
        label="Added to reach the plan's datum"
        units={units}
        value={series.offset_m}
        onTake={(offset_m) => onTake({ offset_m })}
      />
      <TextField
        label="Where that offset comes from"
        value={series.offset_source}
        onTake={(offset_source) => onTake({ offset_source })}
      />
      <TextField
        label="Whom to name for the data"
        value={series.attribution}
        onTake={(attribution) => onTake({ attribution })}
      />
    </div>
  );
}

/** A compared series starts with the other basis. */
const freshSeries = (
  datum: string,
  which: Props["which"],
  first: SeriesFile | null,
): Omit<SeriesFile, "file"> => ({
  kind: "readings",
  basis: which === "compare" && first?.basis === "recorded" ? "predicted" : "recorded",
  columns: { time: "time", level: "level", flag: null },
  unit: "m",
  zone: "UTC",
  datum,
  offset_m: 0,
  offset_source: "",
  attribution: "",
});
