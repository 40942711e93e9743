import type { DragCoefficient } from "@causey/engine/materials";

type Family = NonNullable<DragCoefficient["family"]>;

const shape = (
  id: string,
  name: string,
  cd: number,
  source: string,
  status: DragCoefficient["status"] = "seen",
): DragCoefficient => ({ id, name, family: null, ratio: null, cd, source, status });

const row = (family: Family, name: string, ratio: number, cd: number, source: string): DragCoefficient => ({
  id: `${family}-${ratio}`,
  name: `${name} ${ratio}`,
  family,
  ratio,
  cd,
  source,
  status: "seen",
});

const rectangle = (ratio: number, cd: number): DragCoefficient =>
  row("rectangle", "rectangle across the flow, length along it over height", ratio, cd, "drag-of-bodies");
const corner = (ratio: number, cd: number): DragCoefficient =>
  row("rod-corner", "square rod, corner radius over width", ratio, cd, "drag-of-bodies");
const cylinder = (ratio: number, cd: number): DragCoefficient =>
  row("cylinder", "cylinder across the flow, length over diameter", ratio, cd, "aero-data-book");

/**
 * Drag coefficients on the area that the flow sees. The printed "under 0.1" of a rectangle stands at 0.1, and the
 * endless cylinder at 1000.
 */
export const dragCoefficients: readonly DragCoefficient[] = [
  shape("post-square", "square or rectangular post", 2.0, "fema-p55"),
  shape("post-round", "round post", 1.2, "fema-p55"),
  shape("plate-square", "square plate across the flow", 1.17, "aero-data-book"),
  shape(
    "plate-long",
    "long plate across the flow: edge of a deck, side board, clogged mesh",
    1.98,
    "aero-data-book",
  ),
  shape("cube", "cube, face to the flow", 1.05, "drag-of-bodies"),
  shape("i-beam", "I-beam", 2.05, "drag-of-bodies"),
  shape("angle", "angle", 1.98, "drag-of-bodies"),
  shape("pier-round", "round bridge pier", 0.7, "aashto-stream"),
  shape("pier-square", "square bridge pier", 1.4, "aashto-stream"),
  shape("pier-wedge", "wedge-nosed bridge pier", 0.8, "aashto-stream"),
  shape("pier-debris", "bridge pier that catches debris", 1.4, "aashto-stream", "memory"),
  shape("mesh-open", "mesh with more than half of it open, on its solid area", 1.6, "mesh-drag", "memory"),
  rectangle(0.1, 1.9),
  rectangle(0.5, 2.5),
  rectangle(0.65, 2.9),
  rectangle(1, 2.2),
  rectangle(2, 1.6),
  rectangle(3, 1.3),
  corner(0, 2.2),
  corner(0.02, 2.0),
  corner(0.17, 1.2),
  corner(0.33, 1.0),
  cylinder(1, 0.63),
  cylinder(2, 0.68),
  cylinder(5, 0.74),
  cylinder(10, 0.82),
  cylinder(40, 0.98),
  cylinder(1000, 1.2),
];
