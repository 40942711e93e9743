import type { Json, JsonObject } from "@causey/engine/formula";
import { attribute, childOf, childrenOf, findInside, textOf, type XmlElement } from "./xml-element.ts";

const FIELDS = ["name", "address", "phoneNumber", "description", "open"] as const;
const NUMBERS = new Set(["int", "uint", "short", "ushort", "float", "double"]);

/** Types of typed fields and looks of shared styles, which a KML file declares apart from its placemarks. */
export interface KmlDeclared {
  readonly types: ReadonlyMap<string, string>;
  readonly styles: ReadonlyMap<string, JsonObject>;
}

/** Properties of a placemark: its own fields, ExtendedData, days, and how it is drawn. */
export function kmlProperties(placemark: XmlElement, { types, styles }: KmlDeclared): JsonObject {
  const properties = new Map<string, Json>();
  for (const field of FIELDS) {
    const text = textOf(childOf(placemark, field));
    if (text !== "") properties.set(field, text);
  }
  const visible = textOf(childOf(placemark, "visibility"));
  if (visible !== "") properties.set("visibility", visible !== "0");
  const style = textOf(childOf(placemark, "styleUrl")).trim();
  if (style !== "") properties.set("styleUrl", style.startsWith("#") ? style : `#${style}`);
  const looks = { ...styles.get(style.replace(/^#/, "")), ...lookOf(childOf(placemark, "Style")) };
  for (const [key, value] of Object.entries(looks)) properties.set(key, value);
  for (const data of childrenOf(placemark, "ExtendedData")) addExtended(data, types, properties);
  addTimes(placemark, properties);
  return Object.fromEntries(properties);
}

function addExtended(
  data: XmlElement,
  types: ReadonlyMap<string, string>,
  properties: Map<string, Json>,
): void {
  for (const entry of childrenOf(data, "Data"))
    properties.set(attribute(entry, "name") ?? "", textOf(childOf(entry, "value")));
  for (const schema of [data, ...childrenOf(data, "SchemaData")])
    for (const entry of childrenOf(schema, "SimpleData")) {
      const name = attribute(entry, "name") ?? "";
      properties.set(name, typed(textOf(entry), types.get(name) ?? "string"));
    }
}

function typed(text: string, type: string): Json {
  if (type === "bool") return /^\s*(1|true)\s*$/i.test(text);
  if (!NUMBERS.has(type)) return text;
  const value = text.trim() === "" ? NaN : Number(text);
  return Number.isFinite(value) ? value : text.trim() === "" ? null : text;
}

function addTimes(placemark: XmlElement, properties: Map<string, Json>): void {
  const [span, stamp] = [childOf(placemark, "TimeSpan"), childOf(placemark, "TimeStamp")];
  if (span !== null)
    properties.set("timespan", { begin: textOf(childOf(span, "begin")), end: textOf(childOf(span, "end")) });
  if (stamp !== null) properties.set("timestamp", textOf(childOf(stamp, "when")));
}

/** Colours, widths and icon of a style, for those who tell areas by their looks. */
export function lookOf(style: XmlElement | null): JsonObject {
  if (style === null) return {};
  const [line, area, icon] = ["LineStyle", "PolyStyle", "IconStyle"].map((tag) => childOf(style, tag));
  const width = line ? Number(textOf(childOf(line, "width")) || NaN) : NaN;
  const href = icon ? textOf(findInside(icon, "href")).trim() : "";
  return {
    ...colour("stroke", line ?? null),
    ...(Number.isFinite(width) ? { "stroke-width": width } : {}),
    ...colour("fill", area ?? null),
    ...(href === "" ? {} : { icon: href }),
  };
}

/** KML writes colours as alpha, blue, green, red. */
function colour(key: "stroke" | "fill", style: XmlElement | null): JsonObject {
  const text = style === null ? "" : textOf(childOf(style, "color")).trim().replace(/^#/, "");
  const parts = /^([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(text);
  if (parts === null) return {};
  const [, alpha, blue, green, red] = parts;
  return { [key]: `#${red}${green}${blue}`, [`${key}-opacity`]: parseInt(alpha!, 16) / 255 };
}
