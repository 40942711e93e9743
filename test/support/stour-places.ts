/** Start and plots on the Stour terrain, chosen on a picture of it (EPSG:27700) [m]. */
export const STOUR_PLACES = {
  start: [621915.5, 233723.5],
  P1: [621942.5, 233664.5],
  P2: [621982.5, 233662.5],
  P3: [621920.5, 233630.5],
} as const;
