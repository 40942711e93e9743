import type { Json } from "@causey/engine/formula";
import { decodeText } from "../files/index.ts";
import type { Findings } from "../problem/index.ts";

/** Brackets inside brackets beyond this are refused: deep nesting is an attack on the stack, not a plan. */
export const JSON_DEPTH = 64;

/**
 * Reads JSON strictly (RFC 8259) and names the line and column of the first fault. Refuses what the built-in
 * reader passes over in silence: a key given twice, the key "__proto__", nesting deeper than `JSON_DEPTH`, and
 * numbers too large for a double. Throws `ProblemError`.
 *
 * limit  largest size that is read [bytes]
 */
export function parseJson(found: Findings, bytes: Uint8Array, limit: number): Json {
  const reader = new JsonReader(found, decodeText(found, bytes, limit));
  return reader.document();
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const BLANK = /[ \t\r\n]*/y;

class JsonReader {
  readonly #found: Findings;
  readonly #text: string;
  #at = 0;

  constructor(found: Findings, text: string) {
    this.#found = found;
    this.#text = text;
  }

  document(): Json {
    const value = this.#value(0);
    this.#blank();
    if (this.#at < this.#text.length) this.#stop("Something stands after the end of the document");
    return value;
  }

  #value(depth: number): Json {
    if (depth > JSON_DEPTH) this.#stop(`Brackets stand more than ${JSON_DEPTH} deep`);
    this.#blank();
    const c = this.#text[this.#at];
    if (c === "{") return this.#object(depth);
    if (c === "[") return this.#array(depth);
    if (c === '"') return this.#string();
    if (c !== undefined && /[-0-9]/.test(c)) return this.#number();
    return this.#word();
  }

  #object(depth: number): Json {
    const entries: [string, Json][] = [];
    const seen = new Set<string>();
    this.#at += 1;
    if (this.#eat("}")) return {};
    do {
      this.#blank();
      if (this.#text[this.#at] !== '"') this.#stop('A key in double quotes, or "}", was expected');
      const start = this.#at;
      const key = this.#string();
      if (key === "__proto__") this.#stop('The key "__proto__" is not allowed', start);
      if (seen.has(key)) this.#stop(`The key "${key.slice(0, 40)}" is given twice`, start);
      seen.add(key);
      if (!this.#eat(":")) this.#stop('":" was expected after the key');
      entries.push([key, this.#value(depth + 1)]);
    } while (this.#eat(","));
    if (!this.#eat("}")) this.#stop('"," or "}" was expected');
    return Object.fromEntries(entries);
  }

  #array(depth: number): Json {
    const items: Json[] = [];
    this.#at += 1;
    if (this.#eat("]")) return items;
    do items.push(this.#value(depth + 1));
    while (this.#eat(","));
    if (!this.#eat("]")) this.#stop('"," or "]" was expected');
    return items;
  }

  #string(): string {
    const start = this.#at;
    const end = this.#closingQuote(start + 1);
    this.#at = end + 1;
    const text = this.#text.slice(start, this.#at);
    if (!text.includes("\\")) return text.slice(1, -1);
    try {
      return JSON.parse(text) as string;
    } catch {
      return this.#stop("A backslash in this text is followed by something it cannot stand before", start);
    }
  }

  #closingQuote(from: number): number {
    for (let i = from; i < this.#text.length; i++) {
      const c = this.#text.charCodeAt(i);
      if (c === QUOTE) return i;
      if (c === BACKSLASH) i += 1;
      else if (c < 0x20) this.#stop("A bare line break or control character stands inside a text", i);
    }
    return this.#stop("This text in quotes does not end", from - 1);
  }

  #number(): number {
    const start = this.#at;
    const text = this.#match(NUMBER);
    if (text === "" || /[\w.+-]/.test(this.#text[this.#at] ?? "")) this.#stop("This is not a number", start);
    const value = Number(text);
    if (!Number.isFinite(value)) this.#stop("The number is too large", start);
    return value;
  }

  #word(): Json {
    const rest = this.#text.slice(this.#at, this.#at + 6);
    for (const [word, value] of [
      ["null", null],
      ["true", true],
      ["false", false],
    ] as const)
      if (rest.startsWith(word) && !/\w/.test(rest[word.length] ?? "")) {
        this.#at += word.length;
        return value;
      }
    return this.#stop(rest === "" ? "The file ends too early" : "A value was expected");
  }

  #match(pattern: RegExp): string {
    pattern.lastIndex = this.#at;
    const text = pattern.exec(this.#text)?.[0] ?? "";
    this.#at += text.length;
    return text;
  }

  #blank(): void {
    this.#match(BLANK);
  }

  #eat(sign: string): boolean {
    this.#blank();
    if (this.#text[this.#at] !== sign) return false;
    this.#at += 1;
    return true;
  }

  #stop(message: string, at = this.#at): never {
    const before = this.#text.slice(0, at).split("\n");
    return this.#found.stop({
      code: "json",
      place: `line ${before.length}, column ${before.at(-1)!.length + 1}`,
      value: this.#text.slice(at, at + 20) || "(end of file)",
      message: `${message}.`,
      mend: "Mend the file at this place; a text editor with JSON checking shows it in red.",
    });
  }
}
