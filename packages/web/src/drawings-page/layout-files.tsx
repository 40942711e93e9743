import { Button } from "@mantine/core";
import type { Plan, Results } from "@causey/engine/plan";
import { ProblemList } from "../frame/problem-list.tsx";
import { useLayoutFiles } from "./use-layout-files.ts";

interface Props {
  readonly plan: Plan;
  readonly results: Results | null;
}

/** The layout as a file for other programs. */
export function LayoutFiles({ plan, results }: Props) {
  const { making, problems, broken, take } = useLayoutFiles(plan, results);
  const isShut = results === null || making !== null;
  return (
    <>
      <div className="form-buttons layout-files">
        <Button
          variant="default"
          disabled={isShut}
          loading={making === "gpx"}
          onClick={() => void take("gpx")}
        >
          For a handheld receiver (GPX)
        </Button>
        <Button
          variant="default"
          disabled={isShut}
          loading={making === "gpkg"}
          onClick={() => void take("gpkg")}
        >
          For a mapping program (GeoPackage)
        </Button>
      </div>
      <div aria-live="polite">
        {problems.length > 0 && <ProblemList problems={problems} />}
        {broken !== null && <p>{broken}</p>}
      </div>
    </>
  );
}
