export { exchangeFiles, type ExchangeFiles } from "./exchange-files.ts";
export { layoutGpx, type GpxWritten } from "./layout-gpx.ts";
export { layoutGeoPackage } from "./layout-geopackage.ts";
