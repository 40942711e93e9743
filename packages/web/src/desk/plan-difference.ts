import type { Plan } from "@causey/engine/plan";

const sectionWords: Partial<Record<keyof Plan, string>> = {
  name: "name",
  site_name: "site name",
  units: "units",
  starts: "start",
  plots: "plots",
  zones: "zones",
  levels: "water levels",
  visits: "visits",
  kit: "kit",
  layout: "layout choices",
  ground: "ground",
  money: "money",
  laying: "laying",
  removal: "removal",
};

/** The sections in which two states of a plan differ, in the words of the screen. */
export function differingSections(a: Plan, b: Plan): string[] {
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])] as (keyof Plan)[];
  return keys
    .filter((key) => JSON.stringify(a[key]) !== JSON.stringify(b[key]))
    .map((key) => sectionWords[key] ?? key);
}
