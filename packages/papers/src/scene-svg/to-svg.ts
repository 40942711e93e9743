import type { Ink, PathShape, Point, Scene, Shape, Stroke } from "../scene/index.ts";
import { inks, paleOf } from "../scene/inks.ts";

const escaped = (text: string): string =>
  text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    // Control characters have no place in XML.
    .replaceAll(/\p{Cc}/gu, (sign) => ("\t\n\r".includes(sign) ? sign : ""));

const n = (value: number): string => String(Math.round(value * 1000) / 1000);

/**
 * A scene as an SVG document in true millimetres. Text stays text; nothing in it can run or reach outside.
 *
 * family  type family that the page has loaded
 */
export function toSvg(scene: Scene, family = "Source Sans 3"): string {
  let clips = 0;
  const draw = (shape: Shape): string => {
    if (shape.kind !== "clip") return drawn(shape);
    const id = `${scene.id}-clip-${++clips}`;
    const { x, y, width, height } = shape.box;
    return `<clipPath id="${escaped(id)}"><rect x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}"/></clipPath><g clip-path="url(#${escaped(id)})">${shape.shapes.map(draw).join("")}</g>`;
  };
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(scene.width)}mm" height="${n(scene.height)}mm" viewBox="0 0 ${n(scene.width)} ${n(scene.height)}" role="img" aria-label="${escaped(scene.title)}" font-family="${escaped(family)}, sans-serif" font-kerning="none">`,
    `<rect width="${n(scene.width)}" height="${n(scene.height)}" fill="#ffffff"/>`,
    ...scene.shapes.map(draw),
    "</svg>\n",
  ].join("\n");
}

function drawn(shape: Exclude<Shape, { kind: "clip" }>): string {
  if (shape.kind === "circle")
    return `<circle cx="${n(shape.at[0])}" cy="${n(shape.at[1])}" r="${n(shape.radius)}"${look(shape)}/>`;
  if (shape.kind === "path") {
    const d = shape.lines.map((line) => pathData(line, shape.closed)).join("");
    return d === "" ? "" : `<path d="${d}"${look(shape)} fill-rule="evenodd"/>`;
  }
  const [x, y] = shape.at;
  const turn = shape.turn === undefined ? "" : ` transform="rotate(${n(shape.turn)} ${n(x)} ${n(y)})"`;
  const weight = shape.weight === "semibold" ? ' font-weight="600"' : "";
  const anchor = shape.anchor === "start" ? "" : ` text-anchor="${shape.anchor}"`;
  const halo = shape.halo
    ? ' stroke="#ffffff" stroke-width="0.9" stroke-linejoin="round" paint-order="stroke"'
    : "";
  return `<text x="${n(x)}" y="${n(y)}" font-size="${n(shape.size)}" fill="${inks[shape.ink]}"${weight}${anchor}${turn}${halo}>${escaped(shape.text)}</text>`;
}

const pathData = (line: readonly Point[], closed: boolean): string =>
  line.length < 2 ? "" : `M${line.map(([x, y]) => `${n(x)} ${n(y)}`).join("L")}${closed ? "Z" : ""}`;

function look({ stroke, fill }: { readonly stroke?: Stroke; readonly fill?: PathShape["fill"] }): string {
  const dash = stroke?.dash ? ` stroke-dasharray="${stroke.dash.map(n).join(" ")}"` : "";
  const line = stroke
    ? ` stroke="${inks[stroke.ink]}" stroke-width="${n(stroke.width)}" stroke-linejoin="round"${dash}`
    : "";
  return `${line} fill="${fillOf(fill)}"`;
}

function fillOf(fill: PathShape["fill"]): string {
  if (fill === undefined) return "none";
  if (fill === "white") return "#ffffff";
  return fill.startsWith("pale-") ? paleOf(fill.slice(5) as Ink) : inks[fill as Ink];
}
