import type { DateOrder, DecimalSign } from "@causey/io/points";

interface Written<T extends string> {
  readonly value: T;
  readonly words: string;
}

/** How a file writes its decimals. */
export const decimalChoices: readonly Written<DecimalSign>[] = [
  { value: "point", words: "a point: 1.25" },
  { value: "comma", words: "a comma: 1,25" },
];

/** How a file writes its days. */
export const dateOrderChoices: readonly Written<DateOrder>[] = [
  { value: "ymd", words: "year, month, day" },
  { value: "dmy", words: "day, month, year" },
  { value: "mdy", words: "month, day, year" },
];
