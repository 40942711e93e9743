import { shorten } from "../formula/index.ts";
import type { Fault } from "./fault.ts";
import type { Outline, Spot } from "./types.ts";

export type Members = Readonly<Record<string, unknown>>;

export const isObject = (v: unknown): v is Members =>
  typeof v === "object" && v !== null && !Array.isArray(v);
const isSpot = (v: unknown): v is Spot =>
  Array.isArray(v) && v.length >= 2 && Number.isFinite(v[0]) && Number.isFinite(v[1]);

/** Reads members of one feature and reports each that is missing or of the wrong type. */
export class Feature {
  readonly place: string;
  private readonly members: Members;
  private readonly geometry: Members;
  private readonly fault: Fault;
  sound = true;

  constructor(raw: unknown, index: number, fault: Fault) {
    const feature = isObject(raw) ? raw : {};
    this.members = isObject(feature["properties"]) ? feature["properties"] : {};
    this.geometry = isObject(feature["geometry"]) ? feature["geometry"] : {};
    this.fault = fault;
    this.place = `feature ${index} (${String(this.members["kind"])} ${String(this.members["id"] ?? this.members["joint"])})`;
  }

  get kind(): string {
    return typeof this.members["kind"] === "string" ? this.members["kind"] : "";
  }

  private wrong(key: string, want: string, value: unknown): void {
    this.sound = false;
    this.fault(this.place, shorten(value), `"${key}" must be ${want}`, `Write "${key}".`);
  }

  text(key: string): string {
    const v = this.members[key];
    if (typeof v === "string" && v !== "") return v;
    this.wrong(key, "a text", v);
    return "";
  }

  /** A text that may be empty, but must be there. */
  textOrNothing(key: string): string {
    return this.members[key] === "" ? "" : this.text(key);
  }

  number(key: string): number {
    const v = this.members[key];
    if (typeof v === "number" && Number.isFinite(v)) return v;
    this.wrong(key, "a number", v);
    return NaN;
  }

  point(): Spot {
    const c = this.geometry["coordinates"];
    if (this.geometry["type"] === "Point" && isSpot(c)) return [c[0], c[1]];
    this.wrong("geometry", "a point", c);
    return [NaN, NaN];
  }

  /** The outer ring of a polygon, which must be convex: parts and feet are rectangles. */
  outline(): Outline {
    const c = this.geometry["coordinates"];
    const ring: unknown = Array.isArray(c) ? c[0] : undefined;
    if (this.geometry["type"] === "Polygon" && Array.isArray(ring) && ring.length > 3 && ring.every(isSpot)) {
      const corners = ring.map((p: Spot): Spot => [p[0], p[1]]);
      if (isConvex(corners)) return corners;
    }
    this.wrong("geometry", "a polygon of one convex ring", c);
    return [];
  }
}

function isConvex(ring: Outline): boolean {
  let [left, right] = [false, false];
  for (let i = 0; i < ring.length; i++) {
    const [a, b, c] = [ring[i]!, ring[(i + 1) % ring.length]!, ring[(i + 2) % ring.length]!];
    const bend = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
    left ||= bend > 1e-9;
    right ||= bend < -1e-9;
  }
  return left !== right;
}
