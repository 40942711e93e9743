import { readLayers } from "@causey/io/layers";
import { readPoints } from "@causey/io/points";
import { clock } from "./report.mjs";

const columns = { id: "id", x: "x", y: "y", z: "z", code: null, accuracy: "acc", date: "day" };
const options = { columns, unit: "m", decimal: "point", date_order: "ymd" };
const utf8 = (text) => new TextEncoder().encode(text);
const row = (i) => [391_000 + (i % 997) / 3, 4_605_000 + (i % 1009) / 7, 1 + (i % 89) / 100];

function csv(count) {
  const lines = ["id,x,y,z,acc,day"];
  for (let i = 0; i < count; i++) {
    const [x, y, z] = row(i);
    lines.push(`P${i},${x.toFixed(3)},${y.toFixed(3)},${z.toFixed(3)},0.015,2026-05-${10 + (i % 20)}`);
  }
  return utf8(lines.join("\n"));
}

function gpx(count) {
  const places = Array.from(
    { length: count },
    (_, i) => `<wpt lat="${52 + i / 1e6}" lon="${1 + (i % 7) / 1e3}"><name>P${i}</name></wpt>`,
  );
  return utf8(
    `<?xml version="1.0"?><gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">${places.join("")}</gpx>`,
  );
}

function geojson(count) {
  const ring = Array.from({ length: count }, (_, i) => {
    const a = (2 * Math.PI * i) / count;
    return [1 + Math.cos(a) / 1e3, 52 + Math.sin(a) / 1e3];
  });
  const geometry = { type: "Polygon", coordinates: [[...ring, ring[0]]] };
  return utf8(
    JSON.stringify({
      type: "FeatureCollection",
      features: [{ type: "Feature", properties: { name: "A" }, geometry }],
    }),
  );
}

/** Files as people bring them: survey points of growing size, waypoints, the outline of one area. */
export async function* rows() {
  for (const count of [10_000, 100_000, 1_000_000]) {
    const bytes = csv(count);
    const { ms, value } = clock(() => readPoints("points.csv", bytes, options));
    yield { read: "CSV points", MB: bytes.length / 1e6, places: value.points.x.length, ms };
  }
  for (const [read, name, make] of [
    ["GPX waypoints", "plots.gpx", gpx],
    ["GeoJSON outline", "area.geojson", geojson],
  ])
    for (const count of [1_000, 10_000, 40_000]) {
      const bytes = make(count);
      const from = performance.now();
      const { layers } = await readLayers(name, bytes);
      yield {
        read,
        MB: bytes.length / 1e6,
        places: count,
        layers: layers.length,
        ms: performance.now() - from,
      };
    }
}
