import type { Coating } from "@causey/engine/materials";

export const MM_PER_IN = 25.4;

export const coatingWords: Readonly<Record<Coating, string>> = {
  "stainless-316": "stainless 316",
  "stainless-304": "stainless 304",
  "hot-dip-zinc": "hot-dip galvanised",
  "plain-zinc": "plain zinc",
  none: "uncoated",
};

/** End of a row's id: the hot-dip galvanised row is the plain one. */
export const idEnd: Readonly<Record<Coating, string>> = {
  "stainless-316": "-316",
  "stainless-304": "-304",
  "hot-dip-zinc": "",
  "plain-zinc": "-zinc",
  none: "-bare",
};

/** "3-1/2 in" of 3.5, "2-1/4 in" of 2.25. */
export function inchText(v: number): string {
  const whole = Math.floor(v);
  const quarter = { 0: "", 0.25: "1/4", 0.5: "1/2", 0.75: "3/4" }[v - whole] ?? "";
  return `${[...(whole > 0 ? [whole] : []), ...(quarter ? [quarter] : [])].join("-")} in`;
}
