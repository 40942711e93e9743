import { Button } from "@mantine/core";
import { ProblemError, type Problem } from "@causey/engine/formula";
import { writeArchive } from "@causey/io/archive";
import type { PlanCrs } from "@causey/io/crs";
import { useState } from "react";
import { useDesk } from "../desk/desk.ts";
import { ChoiceField } from "../fields/choice-field.tsx";
import { GridPlace } from "../fields/grid-place.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { useAfterFields } from "../fields/use-after-fields.ts";
import { ProblemList } from "../frame/problem-list.tsx";
import { asksSystem, blankPlan, newPlanFiles, startSystem, type NewPlan } from "./new-plan.ts";
import { TerrainRow } from "./terrain-row.tsx";
import { useTerrainLook } from "./use-terrain-look.ts";
import "../fields/fields.css";

interface Sending {
  readonly isOn: boolean;
  readonly problems: readonly Problem[];
  readonly broken: string | null;
}

/** Asks what a plan needs to begin, and hands its folder to the store as any other plan is handed over. */
export function NewPlanForm({ onStarted }: { readonly onStarted: (plan: string) => void }) {
  const desk = useDesk();
  const [asked, setAsked] = useState<NewPlan>(blankPlan);
  const [sending, setSending] = useState<Sending>({ isOn: false, problems: [], broken: null });
  const terrain = useTerrainLook();
  const put = (part: Partial<NewPlan>): void => {
    setAsked((last) => ({ ...last, ...part }));
    setSending((last) => ({ ...last, problems: [], broken: null }));
  };

  const start = async (): Promise<void> => {
    setSending({ isOn: true, problems: [], broken: null });
    try {
      const answer = await desk.plans.open(writeArchive(newPlanFiles(asked, terrain.look)));
      if (answer.kind === "opened") return onStarted(answer.id);
      setSending({ isOn: false, problems: answer.problems, broken: null });
    } catch (error) {
      const problems = error instanceof ProblemError ? error.problems : [];
      const words = error instanceof Error ? error.message : String(error);
      setSending({ isOn: false, problems, broken: problems.length > 0 ? null : words });
    }
  };
  const press = useAfterFields(() => void start());
  return (
    <div className="new-plan">
      <div className="fields">
        <TextField required label="Name of the plan" value={asked.name} onTake={(name) => put({ name })} />
        <TextField
          label="Name of the site"
          value={asked.site_name}
          onTake={(site_name) => put({ site_name })}
        />
        <ChoiceField
          label="Lengths are shown in"
          value={asked.units}
          choices={[
            { value: "us", words: "feet and inches" },
            { value: "metric", words: "metres" },
          ]}
          onTake={(units) => put({ units })}
        />
        <ChoiceField
          label="Heights of the ground"
          value={asked.ground}
          choices={[
            { value: "file", words: "from a terrain file" },
            { value: "stations", words: "no terrain: read on site" },
          ]}
          onTake={(ground) => put({ ground })}
        />
      </div>
      {asked.ground === "file" && (
        <TerrainRow
          terrain={terrain}
          onLook={(look) => put(asked.datum === "" && look.vertical ? { datum: look.vertical.name } : {})}
        />
      )}
      <div className="fields">
        {asksSystem(asked, terrain.look) && <SystemFields asked={asked} onTake={put} />}
        <TextField
          required
          label="Vertical datum of the heights"
          description="As their maker names it: NAVD88, ODN, or a mark on site."
          value={asked.datum}
          onTake={(datum) => put({ datum })}
        />
      </div>
      <div className="fields">
        <StartFields asked={asked} crs={startSystem(asked, terrain.look)} onTake={put} />
      </div>
      <div aria-live="polite">
        {sending.broken !== null && <p className="plans-broken">{sending.broken}</p>}
        {sending.problems.length > 0 && (
          <>
            <p className="plans-broken">The plan was not started. What is still open or wrong:</p>
            <ProblemList problems={sending.problems} />
          </>
        )}
      </div>
      <Button loading={sending.isOn} disabled={terrain.isReading} {...press}>
        Start the plan
      </Button>
    </div>
  );
}

interface PartProps {
  readonly asked: NewPlan;
  readonly onTake: (part: Partial<NewPlan>) => void;
}

/** The system, where no file says it. Nothing is chosen beforehand. */
const SystemFields = ({ asked, onTake }: PartProps) => (
  <>
    <ChoiceField
      label="Coordinate system"
      description={asked.ground === "file" ? "The file does not name it." : "Metres, east and north."}
      value={asked.system}
      choices={[
        { value: "", words: "choose" },
        { value: "epsg", words: "a system by its EPSG code" },
        { value: "local", words: "a local grid of your own" },
      ]}
      onTake={(system) => onTake({ system })}
    />
    {asked.system === "epsg" && (
      <NumberField
        label="EPSG code"
        description="Such as 27700 or 32618."
        optional
        empty="not told"
        whole
        least={1}
        value={asked.epsg}
        onTake={(epsg) => onTake({ epsg })}
      />
    )}
    {asked.system === "local" && (
      <TextField
        label="Name of the grid"
        value={asked.grid_name}
        onTake={(grid_name) => onTake({ grid_name })}
      />
    )}
  </>
);

/** Where the walkway begins; with no terrain the ground there is all that is known. */
function StartFields({ asked, crs, onTake }: PartProps & { readonly crs: PlanCrs | null }) {
  const isBare = asked.ground === "stations";
  const empty = isBare ? "not told" : "at the terrain's edge, to be moved";
  return (
    <>
      <GridPlace
        noun="Start"
        crs={crs}
        empty={empty}
        place={asked.start}
        onTake={(start) => onTake({ start, isStartUnread: false })}
        onUnread={(isStartUnread) => onTake({ isStartUnread })}
      />
      {isBare && (
        <LengthField
          label="Height of the ground at the start"
          optional
          empty="not told"
          units={asked.units}
          value={asked.ground_m}
          onTake={(ground_m) => onTake({ ground_m })}
        />
      )}
    </>
  );
}
