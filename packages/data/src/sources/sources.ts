import type { Source } from "@causey/engine/formula";

const source = (id: string, title: string, at: string, status: Source["status"]): Source => ({
  id,
  title,
  at,
  status,
});

/** Every source a table row may name, by id. The status here is that of the source as a whole; each row has its own. */
export const sources = {
  "awc-nds-s-4a": source(
    "awc-nds-s-4a",
    "AWC National Design Specification Supplement, 2018 edition",
    "Table 4A, visually graded dimension lumber, all species except Southern Pine",
    "seen",
  ),
  "awc-nds-s-4b": source(
    "awc-nds-s-4b",
    "AWC National Design Specification Supplement, 2018 edition",
    "Table 4B, Southern Pine; metric values seen, psi is the table step that rounds to them",
    "computed",
  ),
  "en-338": source(
    "en-338",
    "EN 338, Structural timber, strength classes (2009 and later)",
    "Table 1, softwood; values as carried in a public finite-element library, those marked so from memory",
    "seen",
  ),
  "metric-yard": source(
    "metric-yard",
    "Metric sawn and planed softwood sizes of European yards",
    "common practice, no source",
    "practice",
  ),
  "ps-20": source(
    "ps-20",
    "American Softwood Lumber Standard PS 20",
    "dressed sizes, dry, as repeated in public lumber size charts",
    "seen",
  ),
  "asme-b18-6-1": source(
    "asme-b18-6-1",
    "ASME B18.6.1, wood screws (cut thread)",
    "shank and root diameters by gauge number",
    "memory",
  ),
  "astm-f1667": source("astm-f1667", "ASTM F1667, driven fasteners", "common nails, shank diameter", "seen"),
  "ring-shank-nails": source(
    "ring-shank-nails",
    "Ring-shank nails of the sizes of common nails",
    "rings on the lower half of the shank",
    "memory",
  ),
  "asme-b18-2-1": source(
    "asme-b18-2-1",
    "ASME B18.2.1, lag screws (NDS 2018, Table L2)",
    "root, point, thread and head by nominal size; bending yield of Table I1",
    "memory",
  ),
  "en-14592": source(
    "en-14592",
    "EN 14592, dowel-type fasteners",
    "usual nails and screws of no maker: least tensile strength, root and head",
    "memory",
  ),
  "causey-holes": source(
    "causey-holes",
    "Project decision on used screw holes",
    "a round figure on the careful side; test one on your own timber",
    "project",
  ),
  "causey-used-timber": source(
    "causey-used-timber",
    "Project decision on timber that has lain out before",
    "round figures on the careful side, of no test: proof-load a module built of it",
    "project",
  ),
  "asce-7-16-live": source(
    "asce-7-16-live",
    "ASCE 7-16, Minimum Design Loads (page as repeated at scribd.com/document/382883425)",
    "Table 4.3-1, walkways and elevated platforms; yards and terraces, pedestrian",
    "seen",
  ),
  "aashto-pedestrian-2009": source(
    "aashto-pedestrian-2009",
    "AASHTO Guide Specifications for Design of Pedestrian Bridges (2009)",
    "90 psf without reduction, L/360, at least 3 Hz up and down",
    "memory",
  ),
  "iso-14122-2": source(
    "iso-14122-2",
    "ISO 14122-2, working platforms and walkways (summary at vi.scribd.com/document/253189225)",
    "2 kN/m2 for the structure, 1.5 kN on 200 x 200 mm of floor, L/200",
    "seen",
  ),
  "en-1991-2": source(
    "en-1991-2",
    "EN 1991-2, traffic loads on bridges",
    "footbridges: 5 kN/m2, and 10 kN on a square of 0.1 m",
    "memory",
  ),
  "steel-wire-gauge": source("steel-wire-gauge", "Steel wire gauge", "diameter by number", "memory"),
  "welded-mesh": source(
    "welded-mesh",
    "Welded wire mesh as yards keep it; ASTM A1064 plain wire",
    "usual wires and pitches; yield 65 000 psi",
    "memory",
  ),
  "steel-grating": source(
    "steel-grating",
    "Steel bar grating load tables (scribd.com 332168136)",
    "bars at 1-3/16 in",
    "seen",
  ),
  "metric-grating": source("metric-grating", "Steel bar grating by millimetres", "bars at 34.3 mm", "memory"),
  "apa-d510": source(
    "apa-d510",
    "APA D510, Panel Design Specification",
    "capacities by span rating, all panels, strong way across the supports",
    "memory",
  ),
  "plywood-example": source(
    "plywood-example",
    "Worked plywood sheathing example, as repeated in a public test file",
    "32/16: EI 126 500, FbS 407, Fs(Ib/Q) 198 for one foot of width",
    "seen",
  ),
  "yard-mesh-clip": source(
    "yard-mesh-clip",
    "Clips for mesh, grating and panels, fence staples",
    "no published capacity: to be tested on the kit",
    "practice",
  ),
  "wet-boardwalk-leaching": source(
    "wet-boardwalk-leaching",
    "US Forest Service, wetland boardwalk leaching study (fs.usda.gov/treesearch/pubs/5826)",
    "ACQ, ACZA, CCA and CDDC release copper and other metals measurably, with few exceptions close to the walkway",
    "seen",
  ),
  "small-docks": source(
    "small-docks",
    "Management of small docks and piers, public slides (cdn.slideserve.com/balin)",
    "no creosote, no penta; limit CCA in poorly flushed water",
    "seen",
  ),
  "awpa-u1": source(
    "awpa-u1",
    "AWPA Standard U1, use categories",
    "UC3B to UC5: which preservative for which exposure; values from memory",
    "memory",
  ),
  "troop-2015": source(
    "troop-2015",
    "Trail work report, straightarrows.org, 3 July 2015",
    "2 people laid 11 ready-made units, about 90 ft, in about 6 h; planning range around it",
    "computed",
  ),
  "norwich-2020": source(
    "norwich-2020",
    "Norwich trails, work day of 23 August 2020; Caledonia Ramblers, accessible boardwalk",
    "14 people, 3/4 mile carry, 24 ft of deck in 2 h; 60 m of foundations in 600 h; planning range around them",
    "computed",
  ),
  "causey-carry": source(
    "causey-carry",
    "Project decision: which carry counts as short and which as long",
    "long = the 3/4 mile of the Norwich work day; short = a round figure",
    "project",
  ),
  "fema-p55": source(
    "fema-p55",
    "FEMA P-55, Coastal Construction Manual, 4th edition",
    "drag on piles, section 8",
    "seen",
  ),
  "drag-of-bodies": source(
    "drag-of-bodies",
    "Fluid mechanics text, drag of bodies (scribd.com/document/591607266)",
    "tables 9.19 and 9.20",
    "seen",
  ),
  "aero-data-book": source(
    "aero-data-book",
    "Aeronautical Engineer's Data Book (digilib.universitaspertamina.ac.id)",
    "p. 95, plates and cylinders",
    "seen",
  ),
  "aashto-stream": source(
    "aashto-stream",
    "AASHTO stream pressure on piers, column of a comparison of bridge codes (scribd.com/document/376460115)",
    "p = Cd V^2 / 1000, ksf and ft/s",
    "seen",
  ),
  "mesh-drag": source(
    "mesh-drag",
    "Drag of perforated plates and mesh on their solid area",
    "1.2 to 1.6 where more than half is open; rough",
    "memory",
  ),
  "wong-2008": source(
    "wong-2008",
    "Wong, Theory of Ground Vehicles (2008), as a public source file quotes it",
    "pressure-sinkage values: kc in kN/m^(n+1), kphi in kN/m^(n+2), c in kPa, phi in degrees",
    "seen",
  ),
  "wong-muskeg": source(
    "wong-muskeg",
    "Wong, pressure and sinkage of muskeg with a living mat (1980s)",
    "kp and mm of two places at Petawawa, from memory; units and values to be verified",
    "memory",
  ),
  "soft-soil-compression": source(
    "soft-soil-compression",
    "Compressibility of peat and soft clay, general knowledge",
    "Cc about water content in per cent / 100, e0 of peat 5 to 15, Ca/Cc 0.06 peat, 0.05 organic clay, 0.04 clay",
    "memory",
  ),
  "fibric-peat": source(
    "fibric-peat",
    "Compression of fibric peat (yumpu.com 30159183 p. 8)",
    "Cc 1.81 at 50 kPa seen; void ratio and unit weight from memory",
    "memory",
  ),
} as const satisfies Readonly<Record<string, Source>>;

export type SourceId = keyof typeof sources;
