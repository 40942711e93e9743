import "./fields.css";

/** The page's own picture when it is a form: it scrolls by itself, so it can be reached by keys. */
export const FormSheet = ({
  label,
  children,
}: {
  readonly label: string;
  readonly children: React.ReactNode;
}) => (
  // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
  <section className="form-sheet" aria-label={label} tabIndex={0}>
    {children}
  </section>
);

/** A group of fields under one head. No landmark: what is worked out from it stands beside it under the same words. */
export const FieldGroup = ({
  title,
  note,
  at,
  children,
}: {
  readonly title: string;
  readonly note?: string;
  /** For a page that leads to this group. */
  readonly at?: React.Ref<HTMLDivElement>;
  readonly children: React.ReactNode;
}) => (
  <div className="field-group" ref={at}>
    <h2>{title}</h2>
    {note !== undefined && <p className="quiet">{note}</p>}
    {children}
  </div>
);
