const FT = 0.3048;

/** A file of check shots as a user might choose it, and what the dialog must say of it. */
export interface BadReadings {
  readonly title: string;
  readonly csv: string;
  /** Fields of the dialog to be set first, by label. */
  readonly choose?: Readonly<Record<string, string>>;
  readonly message: RegExp;
  readonly place: RegExp;
  readonly mend: RegExp;
  /** Whether nothing can be taken over; otherwise the user decides, warned. */
  readonly isRefused: boolean;
  /** Words of the list of rows that are left out. */
  readonly listed?: readonly RegExp[];
}

/** Eight shots on the demo's site. */
const shots = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => ({
  i,
  e: 1010 + 30 * i,
  n: 2040 + 11 * i,
  z: 1.5 + i / 20,
}));
type Shot = (typeof shots)[number];
const csv = (row: (s: Shot) => string, head = "name,e,n,height"): string =>
  [head, ...shots.map(row)].join("\n");
const plain = ({ i, e, n }: Shot, z: string | number): string => `C${i},${e},${n},${z}`;

export const badReadings: readonly BadReadings[] = [
  {
    title: "X = Y = 0 in every row",
    csv: csv(({ i, z }) => `C${i},0,0,${z}`),
    message: /No row of the file is a point with a position/,
    place: /file/,
    mend: /columns that are named for x, y/,
    isRefused: true,
  },
  {
    title: "X = Y = 0 in some rows",
    csv: csv((s) => (s.i === 2 || s.i === 5 ? `C${s.i},0,0,${s.z}` : plain(s, s.z))),
    message: /2 rows with the position 0, 0/,
    place: /4 \(C2\), 7 \(C5\)/,
    mend: /field book/,
    isRefused: false,
    listed: [/Line 4 \(C2\): position 0, 0/, /Line 7 \(C5\): position 0, 0/],
  },
  {
    title: "feet in a column of metres, which its head says",
    csv: csv((s) => plain(s, (s.z / FT).toFixed(2)), "name,e,n,height_ft"),
    choose: { "Column: Height": "height_ft" },
    message: /"height_ft" names feet; the file is read in metres/,
    place: /line 1/,
    mend: /Choose feet/,
    isRefused: true,
  },
  {
    title: "feet in a column of metres, far from every height that is known",
    csv: csv((s) => plain(s, ((s.z + 0.7) / FT).toFixed(2))),
    message: /near one when read as feet/,
    place: /column "height"/,
    mend: /Choose feet as the unit/,
    isRefused: true,
  },
  ...[-27, 27].map((off): BadReadings => ({
    title: `ellipsoid heights, ${off} m off`,
    csv: csv((s) => plain(s, (s.z + off).toFixed(3))),
    message: /look like heights above the ellipsoid/,
    place: /median -?2\d\.\d+ m/,
    mend: /geoid model/,
    isRefused: true,
  })),
  {
    title: "degrees in columns of metres",
    csv: csv(({ i, e, n, z }) => `C${i},${-70 + e / 1e5},${41 + n / 1e5},${z}`),
    message: /most likely hold degrees of longitude and latitude/,
    place: /columns "e" and "n"/,
    mend: /plan's own system/,
    isRefused: true,
  },
  {
    title: "columns of latitude and longitude that hold metres",
    csv: csv((s) => plain(s, s.z), "name,lon,lat,height"),
    choose: { "Column: East": "lon", "Column: North": "lat" },
    message: /named as degrees but hold lengths/,
    place: /1010, 2040/,
    mend: /not exchanged/,
    isRefused: false,
  },
  {
    title: "mixed date orders",
    csv: csv((s) => `${plain(s, s.z)},${s.i === 3 ? "25/10/2026" : "2026-10-05"}`, "name,e,n,height,date"),
    message: /"25\/10\/2026" cannot be a date in the order year-month-day; it reads as day-month-year/,
    place: /line 5/,
    mend: /if orders are mixed, mend the file/,
    isRefused: true,
  },
  {
    title: "semicolons and decimal commas, read with points",
    csv: csv((s) => plain(s, s.z.toFixed(2)).replaceAll(",", ";").replaceAll(".", ","), "name;e;n;height"),
    message: /"1,50" has a decimal comma; the file is read with decimal points/,
    place: /line 2/,
    mend: /Choose decimal comma/,
    isRefused: true,
  },
  {
    title: "a formula in a cell of heights",
    csv: csv((s) => plain(s, s.i === 4 ? "=B2+1" : s.z)),
    message: /"=B2\+1" is a formula or its fault, not a value/,
    place: /line 6/,
    mend: /values in place of formulas/,
    isRefused: true,
  },
];
