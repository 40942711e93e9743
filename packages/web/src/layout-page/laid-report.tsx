import type { AsLaidReport } from "@causey/engine/layout";
import { showQuantity, type UnitSystem } from "@causey/engine/units";
import { count } from "../show/show.ts";

/** What was read back of the joints against what was planned, and what it changed. */
export function LaidReport({
  report,
  units,
}: {
  readonly report: AsLaidReport | null;
  readonly units: UnitSystem;
}) {
  if (report === null) return null;
  const off = (v: number): string => showQuantity(Math.abs(v), "m", units);
  return (
    <section aria-labelledby="laid-head">
      <h2 id="laid-head">As laid</h2>
      <p>
        {count(report.kept.length, "part")} lie and stay, {count(report.refitted.length, "part")} fitted anew.
      </p>
      <ul className="notes">
        {report.joints.map((j) => (
          <li key={j.joint} data-laid={j.joint}>
            <b>{j.joint}</b>: {off(j.along_m)} {j.along_m < 0 ? "short" : "on"}, {off(j.across_m)} to the{" "}
            {j.across_m < 0 ? "left" : "right"}
            {j.dz_m !== null && `, deck ${off(j.dz_m)} ${j.dz_m < 0 ? "low" : "high"}`};{" "}
            {j.within_slop ? "within what the parts allow" : "more than the parts allow"}
          </li>
        ))}
        {report.unknown.length > 0 && (
          <li>
            <b>Left aside: {report.unknown.join(", ")}.</b> The layout has no such joint; look at the tag
            again.
          </li>
        )}
      </ul>
    </section>
  );
}
