import type { CompressibleSoil } from "@causey/engine/ground";

const note = "A stand-in until an oedometer test is at hand: soft soils differ by a factor of two and more.";
const typical = { source: "soft-soil-compression", status: "memory", note } as const;

/** Typical compressibility of soft soils. Used only where a layer names one of them. */
export const compressibleSoils: readonly CompressibleSoil[] = [
  {
    id: "fibric-peat",
    name: "Fibric peat",
    cc: 1.81,
    e0: 7,
    ca_over_cc: 0.06,
    unit_weight_kn_m3: 10.5,
    source: "fibric-peat",
    status: "memory",
    note: "Cc seen for one peat at 50 kPa; the rest from memory.",
  },
  {
    id: "soft-peat",
    name: "Soft wet peat, water content about 600 %",
    cc: 6,
    e0: 10,
    ca_over_cc: 0.06,
    unit_weight_kn_m3: 10.2,
    ...typical,
  },
  {
    id: "organic-clay",
    name: "Organic clay, water content about 120 %",
    cc: 1.2,
    e0: 3,
    ca_over_cc: 0.05,
    unit_weight_kn_m3: 13.5,
    ...typical,
  },
  {
    id: "soft-clay",
    name: "Soft clay, water content about 70 %",
    cc: 0.7,
    e0: 1.9,
    ca_over_cc: 0.04,
    unit_weight_kn_m3: 15.5,
    ...typical,
  },
];
