import { number, z } from "../plan/zod.ts";
import { many, text } from "./layout-schema.ts";

const lengthCount = z.strictObject({ length_mm: number, count: number });

export const takeOffSchema = z.strictObject({
  timber: many(
    z.strictObject({
      size: text,
      length_mm: number,
      count: number,
      uses: many(z.strictObject({ use: text, count: number })),
    }),
  ),
  counted: many(z.strictObject({ item: text, name: text, count: number })),
});

export const cuttingSchema = many(
  z.strictObject({
    size: text,
    plan: z.strictObject({
      cost: number,
      bound: number,
      proven: z.boolean(),
      stock_used: many(lengthCount),
      patterns: many(
        z.strictObject({ stock_mm: number, times: number, cuts: many(lengthCount), offcut_mm: number }),
      ),
    }),
  }),
);

const orderLine = z.strictObject({
  item: text,
  description: text,
  length_mm: z.nullable(number),
  quantity: number,
  needed: number,
  unit_price: number,
  amount: number,
  price_date: text,
  price_source: text,
});

const year = z.strictObject({ year: number, low: number, mid: number, high: number });

export const budgetSchema = z.strictObject({
  currency: text,
  entries: many(
    z.strictObject({
      ...year.shape,
      id: text,
      title: text,
      hours: number,
      donated_hours: number,
      hours_low: number,
      hours_high: number,
      note: text,
    }),
  ),
  years: many(year),
  low: number,
  mid: number,
  high: number,
  donated_hours: number,
  donated_value: number,
  cash: number,
  donated_hours_low: number,
  donated_hours_high: number,
  donated_value_low: number,
  donated_value_high: number,
  cash_low: number,
  cash_high: number,
  days: number,
  visits: number,
  per_metre: z.nullable(number),
  per_foot: z.nullable(number),
  per_visit: z.nullable(number),
  per_year: z.nullable(number),
  warnings: many(text),
  old_prices: many(z.strictObject({ item: text, date: text, age_days: number, order_lines: number })),
});

export const costSchema = z.strictObject({
  currency: text,
  order: many(orderLine),
  unpriced: many(z.strictObject({ item: text, needed: number })),
  price_sources: many(z.strictObject({ source: text, date: text, lines: number, is_example: z.boolean() })),
  labour: many(
    z.strictObject({
      work: z.enum(["laying", "removal"]),
      length_m: number,
      low_h: number,
      mid_h: number,
      high_h: number,
      note: text,
    }),
  ),
  lines: many(
    z.strictObject({
      line: z.enum(["materials", "tax", "delivery", "labour", "removal", "disposal", "contingency"]),
      title: text,
      amount: number,
      note: text,
    }),
  ),
  total: number,
});
