import { InputNotes } from "./input-notes.tsx";

/** The quiet column at the right. It scrolls by itself, so it can be reached by keys. Notes on the input end it. */
export function Ledger({ label, children }: { readonly label: string; readonly children: React.ReactNode }) {
  return (
    // A column that scrolls has to take the focus, or keys could not scroll it.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
    <section className="ledger" aria-label={label} tabIndex={0}>
      {children}
      <InputNotes />
    </section>
  );
}
