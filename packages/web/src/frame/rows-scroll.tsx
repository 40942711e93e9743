/** A table that may be wider than its place: it scrolls by itself, so it can be reached by keys. */
export const RowsScroll = ({
  label,
  children,
}: {
  readonly label: string;
  readonly children: React.ReactNode;
}) => (
  // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
  <section className="rows-scroll" aria-label={label} tabIndex={0}>
    {children}
  </section>
);
