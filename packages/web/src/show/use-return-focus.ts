import { useEffect, useState } from "react";

/** For a dialog that is there only while it is open: gives the focus back to where it was before. */
export function useReturnFocus(): void {
  const [opener] = useState(() => document.activeElement);
  useEffect(
    () => () => {
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus();
    },
    [opener],
  );
}
