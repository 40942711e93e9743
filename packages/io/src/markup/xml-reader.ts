import { quote, type Findings } from "../problem/index.ts";
import type { XmlElement } from "./xml-element.ts";
import { FORBIDDEN, unescaped } from "./xml-text.ts";

/** How deep elements may stand in one another, the longest tag, and most attributes of one. */
const DEPTH_LIMIT = 50;
const TAG_LIMIT = 5000;
const ATTRIBUTE_LIMIT = 60;
/** A track of 100,000 positions with heights, times and the fields of many receivers. */
const ELEMENT_LIMIT = 500_000;

const NAME = "[A-Za-z_:\\u0080-\\uffff][-.\\w:\\u0080-\\uffff]*";
const OPEN = new RegExp(`<(${NAME})`, "y");
const CLOSE = new RegExp(`</(${NAME})\\s*>`, "y");
const ATTRIBUTE = new RegExp(`\\s+(${NAME})\\s*=\\s*(?:"([^"<]*)"|'([^'<]*)')`, "y");
const END = /\s*(\/?)>/y;
const CUT_OFF = "a copy that was cut off on its way looks like this";

/**
 * Reads an XML text without document type into its elements, in one pass. Anything but well-formed XML ends the
 * reading; so do document types and entities (a few lines of which can unfold to gigabytes or name other files), and
 * more or deeper elements and longer tags than a program writes. Undeclared prefixes are let pass.
 */
export class XmlReader {
  readonly #found: Findings;
  readonly #text: string;
  readonly #open: XmlElement[] = [];
  #root: XmlElement | null = null;
  #elements = 0;

  constructor(found: Findings, text: string) {
    this.#found = found;
    this.#text = text;
  }

  /** The first element. Throws `ProblemError`. */
  read(): XmlElement {
    const text = this.#text;
    const odd = FORBIDDEN.exec(text);
    if (odd) this.#broken(odd.index, "The file holds a sign that cannot stand in XML");
    let at = 0;
    while (at < text.length) {
      const next = text.indexOf("<", at);
      const end = next < 0 ? text.length : next;
      if (end > at) this.#words(at, end);
      if (next < 0) break;
      at = this.#markup(next);
    }
    const last = this.#open.at(-1);
    if (last !== undefined) this.#broken(text.length, `The file ends inside the element ${quote(last.name)}`);
    return this.#root ?? this.#broken(text.length, "The file holds no element");
  }

  #words(from: number, to: number): void {
    const raw = this.#text.slice(from, to);
    const parent = this.#open.at(-1);
    if (raw.trim() === "") return;
    if (parent === undefined) this.#broken(from, "Text stands outside the first element");
    parent.content.push(unescaped(raw) ?? this.#reference(from));
  }

  /** Takes the tag, comment or section that begins at `at`; answers where it ends. */
  #markup(at: number): number {
    const text = this.#text;
    switch (text[at + 1]) {
      case "/":
        return this.#close(at);
      case "?":
        return this.#after(at, "?>", "A processing instruction does not end");
      case "!":
        if (text.startsWith("<!--", at)) return this.#after(at, "-->", "A comment does not end");
        return text.startsWith("<![CDATA[", at) ? this.#cdata(at) : this.#declaration(at);
      default:
        return this.#element(at);
    }
  }

  #after(at: number, sign: string, message: string): number {
    const end = this.#text.indexOf(sign, at + 2);
    return end < 0 ? this.#broken(at, message) : end + sign.length;
  }

  #cdata(at: number): number {
    const end = this.#after(at, "]]>", "A CDATA section does not end");
    const parent = this.#open.at(-1);
    if (parent === undefined) this.#broken(at, "Text stands outside the first element");
    parent.content.push(this.#text.slice(at + 9, end - 3));
    return end;
  }

  #element(at: number): number {
    OPEN.lastIndex = at;
    const name = OPEN.exec(this.#text)?.[1];
    if (name === undefined) this.#broken(at, "A tag has no name");
    const attributes: string[] = [];
    let end = at + 1 + name.length;
    for (ATTRIBUTE.lastIndex = end; ; end = ATTRIBUTE.lastIndex) {
      const match = ATTRIBUTE.exec(this.#text);
      if (match === null) break;
      this.#attribute(at, attributes, match[1]!, match[2] ?? match[3]!);
      if (ATTRIBUTE.lastIndex - at > TAG_LIMIT)
        this.#tooMuch(at, `A tag is longer than ${TAG_LIMIT} characters`);
    }
    END.lastIndex = end;
    const closing = END.exec(this.#text);
    if (closing === null) this.#broken(at, `The tag ${quote(name)} does not end`);
    this.#place(at, { name, attributes, content: [] }, closing[1] === "/");
    return END.lastIndex;
  }

  #attribute(at: number, attributes: string[], name: string, raw: string): void {
    for (let i = 0; i < attributes.length; i += 2)
      if (attributes[i] === name) this.#broken(at, `The attribute ${quote(name)} stands twice in one tag`);
    if (attributes.length >= 2 * ATTRIBUTE_LIMIT)
      this.#tooMuch(at, `A tag has more than ${ATTRIBUTE_LIMIT} attributes`);
    attributes.push(name, unescaped(raw) ?? this.#reference(at));
  }

  #place(at: number, element: XmlElement, isEmpty: boolean): void {
    const parent = this.#open.at(-1);
    if (parent !== undefined) parent.content.push(element);
    else if (this.#root === null) this.#root = element;
    else this.#broken(at, "A second element stands beside the first");
    this.#elements += 1;
    if (this.#elements > ELEMENT_LIMIT) this.#tooMuch(at, `At most ${ELEMENT_LIMIT} elements are read`);
    if (isEmpty) return;
    if (this.#open.length >= DEPTH_LIMIT)
      this.#tooMuch(at, `Elements stand more than ${DEPTH_LIMIT} deep in one another`);
    this.#open.push(element);
  }

  #close(at: number): number {
    CLOSE.lastIndex = at;
    const name = CLOSE.exec(this.#text)?.[1];
    const open = this.#open.pop();
    if (name !== undefined && name === open?.name) return CLOSE.lastIndex;
    return this.#broken(
      at,
      name === undefined
        ? "An end tag is damaged"
        : `The end tag ${quote(name)} stands where ${open === undefined ? "no element is open" : `${quote(open.name)} should end`}`,
    );
  }

  #declaration(at: number): never {
    const isEntity = /<!\s*ENTITY/i.test(this.#text.slice(at, at + 100_000));
    return this.#found.stop({
      code: isEntity ? "xml-entity" : "xml-doctype",
      place: this.#lineOf(at),
      value: this.#text.slice(at, at + 60),
      message:
        "The file declares a document type or entities, which KML and GPX do not need and which are refused.",
      mend: "Take the lines that begin with <!DOCTYPE or <!ENTITY out, or export the file again.",
    });
  }

  #reference(at: number): never {
    return this.#broken(at, 'A sign "&" is not the beginning of a sign that XML knows by name or number');
  }

  #tooMuch(at: number, message: string): never {
    return this.#found.stop({
      code: "xml-shape",
      place: this.#lineOf(at),
      value: this.#text.slice(at, at + 60),
      message: `${message}.`,
      mend: "Export only what touches the site, with fewer folders inside folders; thin a long track out to fewer positions.",
    });
  }

  #broken(at: number, message: string): never {
    return this.#found.stop({
      code: "xml",
      place: this.#lineOf(at),
      value: this.#text.slice(at, at + 20),
      message: `The file is not well-formed XML. ${message}.`,
      mend: `Export it again; ${CUT_OFF}.`,
    });
  }

  #lineOf(at: number): string {
    let line = 1;
    for (let i = this.#text.indexOf("\n"); i >= 0 && i < at; i = this.#text.indexOf("\n", i + 1)) line += 1;
    return `line ${line}`;
  }
}
