/** One element of a parsed file, with its texts and elements in their order. */
export interface XmlElement {
  readonly name: string;
  /** Names and values in turn. */
  readonly attributes: readonly string[];
  readonly content: (string | XmlElement)[];
}

/** Value of an attribute; null when the element has none of that name. */
export function attribute({ attributes }: XmlElement, name: string): string | null {
  for (let i = 0; i < attributes.length; i += 2) if (attributes[i] === name) return attributes[i + 1]!;
  return null;
}

export const elementsIn = (parent: XmlElement): readonly XmlElement[] =>
  parent.content.filter((c) => typeof c !== "string");

/** Elements of this name that stand directly in the element. */
export const childrenOf = (parent: XmlElement, name: string): readonly XmlElement[] =>
  elementsIn(parent).filter((c) => c.name === name);

export const childOf = (parent: XmlElement, name: string): XmlElement | null => {
  for (const c of parent.content) if (typeof c !== "string" && c.name === name) return c;
  return null;
};

/** All text inside, whatever elements it stands in. */
export function textOf(element: XmlElement | null): string {
  if (element === null) return "";
  const { content } = element;
  if (content.length === 1 && typeof content[0] === "string") return content[0];
  return content.map((c) => (typeof c === "string" ? c : textOf(c))).join("");
}

/** Calls `visit` with the element and every one inside it, in the order of the file. */
export function eachElement(element: XmlElement, visit: (e: XmlElement) => void): void {
  visit(element);
  for (const c of element.content) if (typeof c !== "string") eachElement(c, visit);
}

/** The first element of this name anywhere inside. */
export function findInside(element: XmlElement, name: string): XmlElement | null {
  for (const c of element.content) {
    if (typeof c === "string") continue;
    const found = c.name === name ? c : findInside(c, name);
    if (found !== null) return found;
  }
  return null;
}
