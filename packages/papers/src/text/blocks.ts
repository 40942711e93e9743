/** A block of text or a table; flows from page to page. */
export type Block =
  | { readonly kind: "head"; readonly text: string }
  | { readonly kind: "text"; readonly text: string; readonly quiet?: boolean; readonly bullet?: boolean }
  | { readonly kind: "rows"; readonly rows: readonly (readonly [label: string, value: string])[] }
  | Table
  | { readonly kind: "space"; readonly height: number }
  /** What follows begins on a page of its own. */
  | { readonly kind: "page" }
  /** Lines to write on. */
  | { readonly kind: "blank"; readonly label: string; readonly lines: number };

export interface Table {
  readonly kind: "table";
  readonly columns: readonly {
    readonly head: string;
    /** Share of the width. */
    readonly share: number;
    readonly align?: "start" | "end";
  }[];
  readonly rows: readonly (readonly string[])[];
  /** Rows, by number, that are sums: in semibold over a rule. */
  readonly sums?: readonly number[];
  /** Rows are left open for a hand to write in: higher, with lines between the columns. */
  readonly toFill?: boolean;
}
