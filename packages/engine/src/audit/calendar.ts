import type { AuditZone } from "./types.ts";

const DAY_MS = 86_400_000;

/** Every month and day from one ISO date to another, both included; a year or more names every day once. */
function daysOf(from: string, to: string): string[] {
  const first = Date.parse(`${from}T00:00:00Z`);
  const days = Math.min(366, Math.round((Date.parse(`${to}T00:00:00Z`) - first) / DAY_MS) + 1);
  return Array.from({ length: Math.max(1, days) }, (_, i) =>
    new Date(first + i * DAY_MS).toISOString().slice(5, 10),
  );
}

/** Whether nobody may work in the zone on at least one day of laying. Dates that cannot be read shut it. */
export function inForce(zone: AuditZone, laying: { readonly from: string; readonly to: string }): boolean {
  if (zone.use === "closed" || zone.use === "buffer") return true;
  if (zone.use !== "seasonal-closure") return false;
  const [opens, ends] = [zone.from, zone.to];
  if (!opens || !ends || Number.isNaN(Date.parse(laying.from) + Date.parse(laying.to))) return true;
  const shut = (day: string): boolean =>
    opens <= ends ? day >= opens && day <= ends : day >= opens || day <= ends;
  return daysOf(laying.from, laying.to).some(shut);
}
