import type { Source } from "@causey/engine/formula";

const seen = (id: string, title: string, at: string): readonly [string, Source] => [
  id,
  { id, title, at, status: "seen" },
];
const other = (
  id: string,
  title: string,
  at: string,
  status: Source["status"],
): readonly [string, Source] => [id, { id, title, at, status }];

/** Where the rules were read. Guidance and law of the named place only. */
export const ruleSources: Readonly<Record<string, Source>> = Object.fromEntries([
  seen(
    "aba-1017",
    "US Access Board, outdoor developed areas: trails (ABA 1017), summary of 2014",
    "bjspark.com/USAB-3, corada.com",
  ),
  seen(
    "ada-2010",
    "2010 ADA Standards for Accessible Design",
    "corada.com/documents/2010ADAStandards, bluedag.com",
  ),
  seen(
    "fs-puncheon",
    "US Forest Service, Trail Construction and Maintenance Notebook, 2004",
    "puncheon, page 26",
  ),
  seen(
    "fs-wetland-trails",
    "US Forest Service, Wetland Trail Design and Construction, 2007",
    "sleepers, page 6",
  ),
  seen(
    "fs-curbs",
    "US Forest Service, trail bridges: curbs (fs.usda.gov/eng/bridges/railsystems/curbs.htm)",
    "bridges without a rail",
  ),
  seen(
    "fs-rails",
    "US Forest Service, railings of trail bridges (htm07232329; 01232833 finish02)",
    "rails and guards",
  ),
  seen("fs-trail-bridge-1993", "US Forest Service Region 6, trail bridge criteria, 1993", "foot bridges"),
  seen(
    "fs-screw-piles",
    "US Forest Service, foundations in wetlands (01232833 found03; htm12232310)",
    "helical piles",
  ),
  seen(
    "osha-1910-23",
    "29 CFR 1910.23, walking and working surfaces (old text, docslib.org/doc/5324822)",
    "open-sided runways",
  ),
  seen(
    "nrcs-568",
    "NRCS code 568, operation and maintenance of trails and walkways (docsbay.net)",
    "inspection",
  ),
  seen(
    "paths-for-all",
    "Paths for All, boardwalks (pathsforall.org.uk/pfa/creating-paths)",
    "widths, ramps, gaps",
  ),
  seen(
    "scottish-grant",
    "Scottish forestry grant scheme, timber boardwalk (ruralpayments.org)",
    "specification",
  ),
  seen("fen-handbook", "Fen Management Handbook, Scottish Natural Heritage (yumpu 11763786)", "page 248"),
  seen("nz-consent", "New Zealand building consent guidance, as quoted (bbs.skytrade.co.nz)", "fall heights"),
  seen(
    "st-lucie-pier",
    "St. Lucie County, Florida, sample dock permit (documents.stlucieco.gov)",
    "440 ft walkway",
  ),
  seen(
    "dock-guidance",
    "Management of small docks and piers, public slides (cdn.slideserve.com/balin)",
    "height over marsh",
  ),
  seen("dock-light", "Georgia dock shading study (skio.uga.edu; savannahnow.com 2012)", "light under decks"),
  seen(
    "bog-bridge-club",
    "Trail club manual on bog bridges, as quoted (vftt.org/threads/bog-bridges.43120)",
    "gap between stringers",
  ),
  other("staff-walkways", "Research walkways for staff: common practice, no source", "", "practice"),
  other("rules-project", "Project decision on rules", "", "project"),
]);
