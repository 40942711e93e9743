import { Button } from "@mantine/core";
import { lazy, Suspense, useState } from "react";
import type { PlanSnapshot } from "../api/types.ts";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { useSection } from "../fields/use-section.ts";

const PhotoDialog = lazy(() => import("./photo-dialog.tsx"));

/** A picture from above under the map: the plan's own file, and how strongly it shows. */
export function PhotoFields({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const { value: photo, take } = useSection(snapshot.plan, "photo");
  const [isOpen, setOpen] = useState(false);
  return (
    <FieldGroup
      title="Photo"
      note="A picture from above, under the map. It gives no heights: those come from the ground."
    >
      <div className="file-row" data-photo={photo === null ? "none" : photo.file}>
        <span>{photo ? <b>{photo.file}</b> : "There is none."}</span>
        <Button variant="default" aria-haspopup="dialog" onClick={() => setOpen(true)}>
          {photo ? "Take another photo" : "Bring in a photo"}
        </Button>
        {photo && (
          <Button variant="default" onClick={() => take(null)}>
            Take the photo away
          </Button>
        )}
      </div>
      {photo && (
        <div className="fields">
          <NumberField
            label="Shown at"
            unit="%"
            scale={100}
            least={5}
            most={100}
            value={photo.opacity ?? 1}
            onTake={(opacity) => take({ ...photo, opacity })}
          />
        </div>
      )}
      <Suspense>{isOpen && <PhotoDialog snapshot={snapshot} onClose={() => setOpen(false)} />}</Suspense>
    </FieldGroup>
  );
}
