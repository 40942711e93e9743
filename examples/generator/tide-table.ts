/** Mean level, mean amplitude and their swings [m on the demo's datum]: the levels of the plan follow from them. */
const MEAN_M = 0.24;
const AMPLITUDE_M = 0.98;
const SPRING_NEAP_M = 0.29;
const PERIGEE_M = 0.11;
const DAILY_M = 0.04;

const HALF_TIDE_H = 12.4206 / 2;
const SPRING_DAYS = 14.765;
const PERIGEE_DAYS = 27.555;
const FIRST = Date.UTC(2027, 4, 1, 2, 10);
const LAST = Date.UTC(2028, 3, 30, 23, 59);

/** Predicted high and low waters of an invented gauge for a year, times in UTC. */
export function tideTable(): string {
  const rows = ["time_utc,level_m,kind"];
  for (let k = 0; FIRST + k * HALF_TIDE_H * 3.6e6 <= LAST; k++) {
    const t = FIRST + k * HALF_TIDE_H * 3.6e6;
    const days = (t - FIRST) / 8.64e7;
    const swing =
      AMPLITUDE_M +
      SPRING_NEAP_M * Math.cos((2 * Math.PI * days) / SPRING_DAYS) +
      PERIGEE_M * Math.cos((2 * Math.PI * days) / PERIGEE_DAYS) +
      (k % 4 < 2 ? DAILY_M : -DAILY_M);
    const isHigh = k % 2 === 0;
    const z = MEAN_M + (isHigh ? swing : -swing);
    const time = new Date(Math.round(t / 60_000) * 60_000).toISOString().slice(0, 16);
    rows.push(`${time}Z,${z.toFixed(2)},${isHigh ? "high" : "low"}`);
  }
  return `${rows.join("\n")}\n`;
}
