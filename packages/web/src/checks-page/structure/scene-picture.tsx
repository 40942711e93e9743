import type { Ink, Shape, Stroke, TextShape } from "@causey/papers/scene";

/** Inks of the drawings in the page's own colours, so that a dark sheet shows them too. */
const colours: Readonly<Record<Ink | "white", string>> = {
  ink: "var(--ink)",
  second: "var(--ink-2)",
  rule: "var(--leader)",
  water: "var(--water)",
  plants: "var(--sedge)",
  warning: "var(--straw)",
  closed: "var(--clay)",
  earth: "var(--earth)",
  white: "var(--sheet)",
};

interface Props {
  readonly shapes: readonly Shape[];
  readonly width: number;
  readonly height: number;
  readonly label: string;
}

/** Shapes of a sheet as a picture of the page. */
export const ScenePicture = ({ shapes, width, height, label }: Props) => (
  <svg className="scene-picture" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
    {shapes.map((shape, i) => (
      // A drawing is made anew as a whole: the place of a shape is its identity.
      // oxlint-disable-next-line react/no-array-index-key
      <Drawn key={i} shape={shape} />
    ))}
  </svg>
);

function Drawn({ shape }: { readonly shape: Shape }) {
  if (shape.kind === "clip")
    return shape.shapes.map((inner, i) => (
      // oxlint-disable-next-line react/no-array-index-key
      <Drawn key={i} shape={inner} />
    ));
  if (shape.kind === "text") return <DrawnText shape={shape} />;
  if (shape.kind === "circle")
    return <circle cx={shape.at[0]} cy={shape.at[1]} r={shape.radius} {...look(shape)} />;
  const lines = shape.lines.filter((line) => line.length > 1);
  const end = shape.closed ? "Z" : "";
  return (
    <path
      d={lines.map((line) => `M${line.map(([x, y]) => `${x} ${y}`).join("L")}${end}`).join("")}
      {...look(shape)}
    />
  );
}

/** Letters over lines have an edge of the paper's colour. */
const HALO = {
  stroke: colours.white,
  strokeWidth: 0.9,
  strokeLinejoin: "round",
  paintOrder: "stroke",
} as const;

const DrawnText = ({ shape }: { readonly shape: TextShape }) => (
  <text
    x={shape.at[0]}
    y={shape.at[1]}
    fontSize={shape.size}
    textAnchor={shape.anchor}
    fontWeight={shape.weight === "semibold" ? 600 : 400}
    fill={colours[shape.ink]}
    {...(shape.halo ? HALO : {})}
  >
    {shape.text}
  </text>
);

function look({ stroke, fill }: { readonly stroke?: Stroke; readonly fill?: string | undefined }) {
  return {
    fill: fill === undefined ? "none" : (colours[fill as Ink] ?? colours.white),
    ...(stroke
      ? {
          stroke: colours[stroke.ink],
          strokeWidth: stroke.width,
          strokeLinejoin: "round" as const,
          ...(stroke.dash ? { strokeDasharray: stroke.dash.join(" ") } : {}),
        }
      : {}),
  };
}
