const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** A number as KML and GPX write it, no further from 0 than `most`; null for anything else. */
export function numberWithin(text: string, most: number): number | null {
  if (!NUMBER.test(text)) return null;
  const value = Number(text);
  return Math.abs(value) <= most ? value : null;
}
