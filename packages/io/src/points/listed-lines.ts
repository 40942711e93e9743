/** Gathers the first places of something that may stand in millions of rows. */
export class ListedLines {
  readonly #most: number;
  readonly #named: string[] = [];
  count = 0;

  constructor(most = 20) {
    this.#most = most;
  }

  add(line: number, id: string | null): void {
    this.count += 1;
    if (this.#named.length < this.#most) this.#named.push(id ? `${line} (${id})` : String(line));
  }

  /** "line 4 (A7)", "lines 4, 5 and 200 more". */
  get text(): string {
    const more = this.count - this.#named.length;
    return `line${this.count === 1 ? "" : "s"} ${this.#named.join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
  }
}
