import { Button } from "@mantine/core";
import type { Plan } from "@causey/engine/plan";
import { lazy, Suspense, useState } from "react";
import type { ImportKind } from "./import-kinds.ts";

const ImportDialog = lazy(() => import("./import-dialog.tsx"));

/** Opens the dialog that brings readings in from a file. */
export function ImportButton({ kind, plan }: { readonly kind: ImportKind; readonly plan: Plan }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <div className="file-row" data-import={kind}>
      <Button variant="default" aria-haspopup="dialog" onClick={() => setOpen(true)}>
        Bring in from a file
      </Button>
      <Suspense>{isOpen && <ImportDialog kind={kind} plan={plan} onClose={() => setOpen(false)} />}</Suspense>
    </div>
  );
}
