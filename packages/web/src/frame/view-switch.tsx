import "./view-switch.css";

export type View = "map" | "lists";

/** Map or lists: the same things, to be pointed at or to be typed. */
export const ViewSwitch = ({
  view,
  onView,
  children,
}: {
  readonly view: View;
  readonly onView: (view: View) => void;
  /** What else can be done from here, at the end of the row. */
  readonly children?: React.ReactNode;
}) => (
  <fieldset className="view-switch">
    <legend className="unseen">Shown as</legend>
    {(["map", "lists"] as const).map((v) => (
      <button
        key={v}
        type="button"
        className="plain-button tool"
        aria-pressed={v === view}
        onClick={() => onView(v)}
      >
        {v === "map" ? "Map" : "Lists"}
      </button>
    ))}
    {children}
  </fieldset>
);
