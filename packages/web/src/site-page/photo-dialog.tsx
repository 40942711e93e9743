import { Button, FileButton } from "@mantine/core";
import type { PlanSnapshot } from "../api/types.ts";
import { crsName } from "@causey/io/crs";
import { Dialog } from "../frame/panel.tsx";
import { ProblemList } from "../frame/problem-list.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { YesField } from "../fields/yes-field.tsx";
import { useSection } from "../fields/use-section.ts";
import { useLayFile } from "./use-lay-file.ts";
import { PICTURE_ENDINGS, usePhotoFile, WORLD_FILES } from "./use-photo-file.ts";

interface Props {
  readonly snapshot: PlanSnapshot;
  readonly onClose: () => void;
}

/** Picture, its world file where it needs one, the user's word for its system, and only then the change of the plan. */
export default function PhotoDialog({ snapshot, onClose }: Props) {
  const { plan, id } = snapshot;
  const { take } = useSection(plan, "photo");
  const laying = useLayFile(id);
  const chosen = usePhotoFile(plan);
  const { file, head, photo, problems } = chosen;
  const isReady = file !== null && photo !== null && problems.every((p) => p.severity === "warning");
  return (
    <Dialog title="Photo from above" closeWords="Close without a change" onClose={onClose}>
      <div className="file-row">
        <span>{file ? <b>{file.name}</b> : "A GeoTIFF, or a JPEG or PNG with its world file."}</span>
        <FileButton
          accept={PICTURE_ENDINGS}
          multiple
          onChange={(files) => files.length > 0 && void chosen.takeFiles(files)}
        >
          {(props) => (
            <Button {...props} variant="default" size="compact-sm">
              {file ? "Choose another picture" : "Choose a picture"}
            </Button>
          )}
        </FileButton>
      </div>
      {head && head.world === null && (
        <div className="file-row">
          <span>
            World file: <b>{chosen.worldName ?? "none yet"}</b>
          </span>
          <FileButton accept={WORLD_FILES} onChange={(picked) => picked && void chosen.takeFiles([picked])}>
            {(props) => (
              <Button {...props} variant="default" size="compact-sm">
                Choose its world file
              </Button>
            )}
          </FileButton>
        </div>
      )}
      {head && photo && (
        <div className="fields">
          {head.crs === null && (
            <YesField
              label={`I have checked that it lies in ${crsName(plan.crs)}`}
              description="The file does not say which system it is in."
              value={photo.crs_confirmed === true}
              onTake={chosen.confirm}
            />
          )}
          <NumberField
            label="Shown at"
            unit="%"
            scale={100}
            least={5}
            most={100}
            value={photo.opacity ?? 1}
            onTake={chosen.setOpacity}
          />
        </div>
      )}
      <div aria-live="polite">
        {head && (
          <p className="quiet">
            {head.cols} x {head.rows} pixels{chosen.size === null ? "" : `, ${chosen.size}`}
          </p>
        )}
        {problems.length > 0 && <ProblemList problems={problems} />}
        {laying.broken !== null && <p className="plans-broken">{laying.broken}</p>}
        {laying.problems.length > 0 && <ProblemList problems={laying.problems} />}
      </div>
      <div className="file-row">
        <Button
          disabled={!isReady}
          loading={laying.isSending}
          onClick={() => {
            if (file === null || photo === null) return;
            void laying.lay(file, (entry) => {
              take({ ...photo, file: entry.name });
              onClose();
            });
          }}
        >
          Lay it under the map
        </Button>
      </div>
    </Dialog>
  );
}
