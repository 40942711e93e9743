import { Button } from "@mantine/core";
import type { Plan } from "@causey/engine/plan";
import { lazy, Suspense, useState } from "react";
import type { LayerTarget } from "./layer-kinds.ts";

const LayerImportDialog = lazy(() => import("./layer-import-dialog.tsx"));

/** Opens the dialog that brings areas or places in from a file of a mapping program. */
export function LayerImportButton({ target, plan }: { readonly target: LayerTarget; readonly plan: Plan }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <div className="file-row" data-layer-import={target}>
      <Button variant="default" aria-haspopup="dialog" onClick={() => setOpen(true)}>
        Bring in from a file
      </Button>
      <Suspense>
        {isOpen && <LayerImportDialog target={target} plan={plan} onClose={() => setOpen(false)} />}
      </Suspense>
    </div>
  );
}
