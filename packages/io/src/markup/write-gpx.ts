import { DomainError } from "@causey/engine/units";

export interface Waypoint {
  readonly name: string;
  /** Degrees on WGS 84. */
  readonly lon: number;
  readonly lat: number;
  /** One line for people. */
  readonly note?: string;
}

export interface Track {
  readonly name: string;
  /** Longitude and latitude in degrees on WGS 84. */
  readonly points: readonly (readonly [number, number])[];
}

/** Nine decimals of a degree are a tenth of a millimetre on the ground. */
const DECIMALS = 9;

/**
 * A GPX 1.1 file of waypoints and tracks. Equal input gives equal bytes. No heights: GPX counts them from the sea,
 * a plan from its own datum. Throws `DomainError` for a position that is none.
 *
 * about  one line for people, kept in the file's head
 */
export function writeGpx(waypoints: readonly Waypoint[], tracks: readonly Track[], about = ""): Uint8Array {
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="Causey" xmlns="http://www.topografix.com/GPX/1/1">',
    ...(about === "" ? [] : [`  <metadata><desc>${escaped(about)}</desc></metadata>`]),
    ...waypoints.map(
      (w) =>
        `  <wpt ${place(w.lon, w.lat)}><name>${escaped(w.name)}</name>` +
        `${w.note === undefined ? "" : `<desc>${escaped(w.note)}</desc>`}</wpt>`,
    ),
    ...tracks.flatMap((t) => [
      `  <trk><name>${escaped(t.name)}</name><trkseg>`,
      ...t.points.map(([lon, lat]) => `    <trkpt ${place(lon, lat)}/>`),
      "  </trkseg></trk>",
    ]),
    "</gpx>",
    "",
  ];
  return new TextEncoder().encode(lines.join("\n"));
}

function place(lon: number, lat: number): string {
  if (!(Math.abs(lon) <= 180 && Math.abs(lat) <= 90)) throw new DomainError("not-lon-lat", { lon, lat });
  return `lat="${lat.toFixed(DECIMALS)}" lon="${lon.toFixed(DECIMALS)}"`;
}

const SIGNS: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Characters that XML 1.0 cannot hold (control characters, halves of pairs) become a blank. */
const escaped = (text: string): string =>
  text.replaceAll(/[\p{Cc}\p{Cs}\ufffe\uffff]/gu, " ").replaceAll(/[&<>"]/g, (c) => SIGNS[c]!);
