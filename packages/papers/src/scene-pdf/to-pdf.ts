import { default as PDFDocument } from "pdfkit";
import { inks, paleOf } from "../scene/inks.ts";
import type { Ink, PathShape, Point, Scene, Shape, Stroke } from "../scene/index.ts";
import { inFont, textWidth } from "../text/index.ts";
import type { Fonts } from "./fonts.ts";

const POINTS_PER_MM = 72 / 25.4;

export interface PdfInfo {
  readonly title: string;
  readonly author: string;
  /** ISO day of the papers; a set without a day carries none that changes from run to run. */
  readonly date: string | null;
}

/**
 * Scenes as the pages of one PDF: vector lines, text that can be searched, the fonts inside.
 *
 * fonts  bytes of the whole TTF files; the caller loads them, so that the same code runs in browser and Node
 * The same scenes and fonts give the same bytes within one build.
 */
export function toPdf(scenes: readonly Scene[], fonts: Fonts, info: PdfInfo): Promise<Uint8Array> {
  const doc = new PDFDocument({
    autoFirstPage: false,
    compress: true,
    // The default font is not there in a browser.
    font: null as unknown as string,
    lang: "en",
    tagged: true,
    displayTitle: true,
    info: {
      Title: info.title,
      Author: info.author,
      Creator: "Causey",
      Producer: "Causey",
      CreationDate: new Date(`${info.date ?? "2000-01-01"}T00:00:00Z`),
    },
  });
  const chunks: Uint8Array[] = [];
  const done = new Promise<Uint8Array>((resolve, reject) => {
    doc.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    doc.on("end", () => resolve(joined(chunks)));
    doc.on("error", reject);
  });
  doc.registerFont("regular", fonts.regular as never);
  doc.registerFont("semibold", fonts.semibold as never);
  for (const scene of scenes) {
    doc.addPage({
      size: [scene.width * POINTS_PER_MM, scene.height * POINTS_PER_MM],
      margin: 0,
    });
    doc.save();
    doc.scale(POINTS_PER_MM);
    const section = doc.struct("Sect", { title: scene.title });
    doc.addStructure(section);
    for (const shape of scene.shapes) drawShape(doc, shape, section);
    section.end();
    doc.restore();
  }
  doc.end();
  return done;
}

type Doc = InstanceType<typeof PDFDocument>;
type Section = ReturnType<Doc["struct"]>;

/** Text is tagged, so that a reader speaks it page by page in the order it is drawn; lines and areas are artifacts. */
function drawShape(doc: Doc, shape: Shape, section: Section): void {
  switch (shape.kind) {
    case "clip": {
      const { x, y, width, height } = shape.box;
      doc.save();
      doc.rect(x, y, width, height).clip();
      for (const inner of shape.shapes) drawShape(doc, inner, section);
      doc.restore();
      return;
    }
    case "circle":
      return asArtifact(doc, () => {
        doc.circle(shape.at[0], shape.at[1], shape.radius);
        paint(doc, shape);
      });
    case "path":
      if (!shape.lines.some((line) => line.length > 1)) return;
      return asArtifact(doc, () => {
        for (const line of shape.lines) trace(doc, line, shape.closed);
        paint(doc, shape);
      });
    case "text":
      return drawText(doc, shape, section);
  }
}

function asArtifact(doc: Doc, draw: () => void): void {
  doc.markContent("Artifact", { type: "Layout" });
  draw();
  doc.endMarkedContent();
}

function trace(doc: Doc, line: readonly Point[], closed: boolean): void {
  line.forEach(([x, y], i) => {
    if (i === 0) doc.moveTo(x, y);
    else doc.lineTo(x, y);
  });
  if (closed) doc.closePath();
}

function paint(doc: Doc, look: { readonly stroke?: Stroke; readonly fill?: PathShape["fill"] }): void {
  const { stroke, fill } = look;
  if (stroke) {
    doc.lineWidth(stroke.width).lineJoin("round").strokeColor(inks[stroke.ink]);
    if (stroke.dash) doc.dash(stroke.dash as never, {});
    else doc.undash();
  }
  if (fill) doc.fillColor(colourOf(fill));
  if (fill && stroke) doc.fillAndStroke(colourOf(fill), inks[stroke.ink], "even-odd");
  else if (fill) doc.fill("even-odd");
  else if (stroke) doc.stroke();
}

function colourOf(fill: NonNullable<PathShape["fill"]>): string {
  if (fill === "white") return "#ffffff";
  return fill.startsWith("pale-") ? paleOf(fill.slice(5) as Ink) : inks[fill as Ink];
}

/** Neither kerning nor ligatures, as on the screen: a line is as long as `textWidth` says. */
const PLAIN = { kern: false, liga: false, clig: false, calt: false };

function drawText(doc: Doc, shape: Extract<Shape, { kind: "text" }>, section: Section): void {
  const text = inFont(shape.text);
  if (text.trim() === "") return;
  const width = textWidth(text, shape.size, shape.weight);
  const shift = shape.anchor === "start" ? 0 : shape.anchor === "middle" ? width / 2 : width;
  const [x, y] = shape.at;
  const write = (options: object): unknown =>
    doc.text(text, x - shift, y, {
      lineBreak: false,
      baseline: "alphabetic",
      features: PLAIN,
      ...options,
    } as never);
  doc.save();
  if (shape.turn !== undefined) doc.rotate(shape.turn, { origin: [x, y] });
  doc.font(shape.weight).fontSize(shape.size);
  if (shape.halo)
    asArtifact(doc, () => {
      doc.lineWidth(0.9).lineJoin("round").undash().strokeColor("#ffffff");
      write({ stroke: true, fill: false });
    });
  const content = doc.markStructureContent("P");
  doc.fillColor(inks[shape.ink]);
  write({});
  doc.endMarkedContent();
  section.add(doc.struct("P", {}, content));
  doc.restore();
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(chunks.reduce((sum, c) => sum + c.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}
