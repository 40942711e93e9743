import type { Source } from "@causey/engine/formula";
import type { LoadRule } from "@causey/engine/materials";
import { PA_PER_PSF } from "@causey/engine/units";

interface Asked {
  readonly id: string;
  readonly name: string;
  readonly asked_by: string;
  readonly source: string;
  readonly status: Source["status"];
  readonly span_over?: number | null;
}

const area = (pressure_pa: number, { span_over = null, ...asked }: Asked): LoadRule => ({
  ...asked,
  span_over,
  kind: "area",
  pressure_pa,
});

const point = (load_n: number, side_m: number, { span_over = null, ...asked }: Asked): LoadRule => ({
  ...asked,
  span_over,
  kind: "point",
  load_n,
  side_m,
});

/**
 * Loads that standards ask of walkways. The single load of 300 lb anywhere is no row of this table: every plan is
 * held against it.
 */
export const loadRules: readonly LoadRule[] = [
  area(60 * PA_PER_PSF, {
    id: "asce-walkway",
    name: "Walkway, 60 psf all over",
    asked_by: "US building officials, for walkways and elevated platforms that are no way out of a building",
    source: "asce-7-16-live",
    status: "seen",
  }),
  area(100 * PA_PER_PSF, {
    id: "asce-terrace",
    name: "Terrace, 100 psf all over",
    asked_by: "US building officials, for yards and terraces where pedestrians gather",
    source: "asce-7-16-live",
    status: "seen",
  }),
  area(90 * PA_PER_PSF, {
    id: "aashto-pedestrian",
    name: "Public footbridge, 90 psf all over",
    asked_by: "US road and park agencies, for a pedestrian bridge open to the public",
    span_over: 360,
    source: "aashto-pedestrian-2009",
    status: "memory",
  }),
  area(2000, {
    id: "iso-walkway",
    name: "Working platform, 2 kN/m2 all over",
    asked_by: "works inspectors, for walkways of staff at plants and machines",
    span_over: 200,
    source: "iso-14122-2",
    status: "seen",
  }),
  point(1500, 0.2, {
    id: "iso-floor-point",
    name: "Working platform, 1.5 kN on 200 x 200 mm",
    asked_by: "works inspectors, for the floor of a walkway of staff at plants and machines",
    span_over: 200,
    source: "iso-14122-2",
    status: "seen",
  }),
  area(5000, {
    id: "en-footbridge",
    name: "Public footbridge, 5 kN/m2 all over",
    asked_by: "European road and park agencies, for a footbridge open to the public",
    source: "en-1991-2",
    status: "memory",
  }),
  point(10_000, 0.1, {
    id: "en-footbridge-point",
    name: "Public footbridge, 10 kN on 0.1 x 0.1 m",
    asked_by: "European road and park agencies, for a footbridge open to the public",
    source: "en-1991-2",
    status: "memory",
  }),
];
