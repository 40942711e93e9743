import { useLayoutEffect, useRef } from "react";
import { flushSync } from "react-dom";

interface Press {
  readonly onMouseDown: (event: React.MouseEvent) => void;
  readonly onClick: (event: React.MouseEvent<HTMLElement>) => void;
}

/**
 * Handlers of a button that works with what the fields around it hold. The field that is being typed into is left only
 * once the press is complete: were it left when the press begins, a note that comes or goes could move the button away
 * from under the hand. `act` then sees what the field gave.
 */
export function useAfterFields(act: (button: HTMLElement) => void): Press {
  const latest = useRef(act);
  useLayoutEffect(() => {
    latest.current = act;
  });
  return {
    onMouseDown: (event) => event.preventDefault(),
    onClick: ({ currentTarget }) => {
      // Taking the focus makes the field give back its value; what follows from that is drawn before the press acts.
      flushSync(() => currentTarget.focus());
      latest.current(currentTarget);
    },
  };
}
