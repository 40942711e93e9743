import type { Json } from "@causey/engine/formula";
import type { Ring } from "@causey/engine/site";
import type { PlanCrs } from "../crs/index.ts";

export interface FeatureJson {
  readonly type: "Feature";
  readonly properties: { readonly [key: string]: Json };
  readonly geometry: { readonly type: string; readonly coordinates: Json };
}

/**
 * The member of the older GeoJSON of 2008 that names the site's system. RFC 7946 dropped it, but a plan is laid out in
 * grid metres, and degrees would cost the millimetres; mapping programs still read it.
 */
export const crsMember = (crs: PlanCrs): Json => ({
  type: "name",
  properties: { name: "epsg" in crs ? `urn:ogc:def:crs:EPSG::${crs.epsg}` : "local" },
});

export const featureCollection = (
  crs: PlanCrs,
  features: readonly FeatureJson[],
  members: { readonly [key: string]: Json } = {},
): { readonly [key: string]: Json } => ({
  type: "FeatureCollection",
  crs: crsMember(crs),
  ...members,
  features: features as unknown as Json,
});

/** GeoJSON repeats the first corner of a ring at its end. */
export const closed = (ring: Ring): Json => [...ring, ring[0]!].map(([x, y]) => [x, y]);
