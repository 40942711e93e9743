import { DOMParser, type Document } from "@xmldom/xmldom";
import { decodeText } from "../files/index.ts";
import { quote, type Findings } from "../problem/index.ts";

/** Largest KML or GPX that is read [bytes], how deep its elements may stand in one another, and the longest tag. */
const BYTE_LIMIT = 20_000_000;
const DEPTH_LIMIT = 50;
const TAG_LIMIT = 5000;
/** A track of 150,000 positions with heights and times. */
const ELEMENT_LIMIT = 600_000;

/**
 * Parses KML or GPX. Refused before the parser sees them: document types and entities (a few lines of which can
 * unfold to gigabytes or name other files), and elements nested deeper than `DEPTH_LIMIT`. Every complaint of the
 * parser is an error. Throws `ProblemError`.
 */
export function parseXml(found: Findings, bytes: Uint8Array, root: "kml" | "gpx"): Document {
  const text = decodeText(found, bytes, BYTE_LIMIT).replace(/^\ufeff/, "");
  const bare = withoutQuotedParts(found, text);
  refuseDeclarations(found, text, bare);
  refuseShape(found, bare);
  const document = parse(found, text);
  if (document.doctype !== null) refuse(found, "xml-doctype", "document type");
  const name = document.documentElement?.nodeName ?? "";
  if (name !== root)
    found.stop({
      code: "xml-root",
      place: "first element",
      value: name,
      message: `The first element is ${quote(name)}, not ${quote(root)}.`,
      mend: `Export the file as ${root.toUpperCase()} again.`,
    });
  return document;
}

/** The text without comments and CDATA, inside which nothing is markup. */
function withoutQuotedParts(found: Findings, text: string): string {
  const parts: string[] = [];
  let at = 0;
  let comment = text.indexOf("<!--");
  let cdata = text.indexOf("<![CDATA[");
  for (;;) {
    if (comment >= 0 && comment < at) comment = text.indexOf("<!--", at);
    if (cdata >= 0 && cdata < at) cdata = text.indexOf("<![CDATA[", at);
    const start = comment < 0 ? cdata : cdata < 0 ? comment : Math.min(comment, cdata);
    if (start < 0) return parts.concat(text.slice(at)).join("");
    parts.push(text.slice(at, start));
    const [open, close] = start === comment ? [4, "-->"] : [9, "]]>"];
    const end = text.indexOf(close, start + open);
    if (end < 0) broken(found, text, start, "A comment or CDATA section does not end");
    at = end + close.length;
  }
}

function refuseDeclarations(found: Findings, text: string, bare: string): void {
  if (/<!\s*ENTITY/i.test(text)) refuse(found, "xml-entity", "<!ENTITY");
  const sign = /<!\s*\w*/.exec(bare)?.[0];
  if (sign !== undefined) refuse(found, "xml-doctype", sign);
}

const refuse = (found: Findings, code: string, value: string): never =>
  found.stop({
    code,
    place: "file",
    value,
    message:
      "The file declares a document type or entities, which KML and GPX do not need and which are refused.",
    mend: "Take the lines that begin with <!DOCTYPE or <!ENTITY out, or export the file again.",
  });

/** Deep nesting, tags with thousands of attributes and millions of elements would keep the parser busy for hours. */
function refuseShape(found: Findings, bare: string): void {
  let depth = 0;
  let elements = 0;
  for (let at = bare.indexOf("<"); at >= 0; at = bare.indexOf("<", at + 1)) {
    const end = tagEnd(bare, at);
    if (end - at > TAG_LIMIT)
      tooMuch(found, bare.slice(at, end), `A tag is longer than ${TAG_LIMIT} characters`);
    if (bare[at + 1] === "/") depth -= 1;
    else {
      elements += 1;
      if (bare[at + 1] !== "?" && bare[end - 1] !== "/") depth += 1;
    }
    if (elements > ELEMENT_LIMIT)
      tooMuch(found, `${elements} elements`, `At most ${ELEMENT_LIMIT} elements are read`);
    if (depth > DEPTH_LIMIT)
      tooMuch(found, bare.slice(at, end), `Elements stand more than ${DEPTH_LIMIT} deep in one another`);
  }
}

/** Where a tag ends: at a ">" outside quotes, or at the next "<", which no attribute may hold. */
function tagEnd(text: string, start: number): number {
  let quoted = "";
  for (let at = start + 1; at < text.length; at++) {
    const c = text[at]!;
    if (c === "<" || at - start > TAG_LIMIT) return at;
    if (quoted !== "") quoted = c === quoted ? "" : quoted;
    else if (c === ">") return at;
    else if (c === '"' || c === "'") quoted = c;
  }
  return text.length;
}

const tooMuch = (found: Findings, value: string, message: string): never =>
  found.stop({
    code: "xml-shape",
    place: "file",
    value,
    message: `${message}.`,
    mend: "Export the file again, with fewer folders inside folders.",
  });

/**
 * Runs the converter over a parsed document. What it throws is a problem of the file: its positions were checked
 * before, and it stumbles only over declarations that no program writes.
 */
export function converted<T>(found: Findings, convert: () => T): T {
  try {
    return convert();
  } catch (fault) {
    return found.stop({
      code: "xml-content",
      place: "file",
      value: fault instanceof Error ? fault.message : "",
      message: "The file is well-formed XML, but its content cannot be read.",
      mend: "Export it again from the program it came from.",
    });
  }
}

function parse(found: Findings, text: string): Document {
  const parser = new DOMParser({
    locator: true,
    onError: (_level, message) => {
      throw new Error(message);
    },
  });
  try {
    return parser.parseFromString(text, "text/xml");
  } catch (fault) {
    const line = (fault as { locator?: { lineNumber?: number } }).locator?.lineNumber;
    const message = fault instanceof Error ? fault.message.split("\n")[0]! : "";
    return found.stop({
      code: "xml",
      place: line === undefined ? "file" : `line ${line}`,
      value: message,
      message: "The file is not well-formed XML.",
      mend: "Export it again; a copy that was cut off on its way looks like this.",
    });
  }
}

function broken(found: Findings, text: string, at: number, message: string): never {
  const line = text.slice(0, at).split("\n").length;
  return found.stop({
    code: "xml",
    place: `line ${line}`,
    value: text.slice(at, at + 20),
    message: `${message}.`,
    mend: "Export the file again; a copy that was cut off on its way looks like this.",
  });
}
