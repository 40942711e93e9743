import { Button } from "@mantine/core";
import { useEffect, useRef } from "react";
import { FieldGroup } from "../fields/form-sheet.tsx";

/** What a file can bring into the site, and the list whose own button reads it. */
const kinds = [
  { words: "Areas with a rule", list: '[data-layer-import="zones"]' },
  { words: "Plots", list: '[data-layer-import="plots"]' },
  { words: "Starts", list: '[data-layer-import="starts"]' },
  { words: "Stations", list: '[data-import="stations"]' },
  { words: "Check shots", list: '[data-import="check-shots"]' },
  { words: "Strength readings", list: '[data-import="shear"]' },
] as const;

/** All that can be brought in from a file, in one place: each opens the dialog of its own list. */
export function BringIn({ isAsked }: { readonly isAsked: boolean }) {
  const row = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (isAsked) row.current?.querySelector("button")?.focus();
  }, [isAsked]);
  const open = (list: string): void => {
    const button = document.querySelector<HTMLButtonElement>(`${list} button`);
    button?.scrollIntoView({ block: "center" });
    button?.click();
  };
  return (
    <FieldGroup
      title="Bring in a file"
      note="From a mapping program, or a table of readings. The ground's own file is chosen under Ground."
    >
      <div ref={row} className="bring-in">
        {kinds.map(({ words, list }) => (
          <Button
            key={list}
            variant="default"
            size="compact-sm"
            aria-haspopup="dialog"
            onClick={() => open(list)}
          >
            {words}
          </Button>
        ))}
      </div>
    </FieldGroup>
  );
}
