import type { Source } from "../formula/index.ts";
import type { WalkwayKind } from "../request/index.ts";

/** What is known of one kind of walkway before a plan is made. */
export interface WalkwayFacts {
  readonly kind: WalkwayKind;
  readonly name: string;
  readonly make_up: string;
  readonly removable: "yes" | "no" | "poorly" | "nothing to remove";
  readonly removal_note: string;
  /** Why one would not take it. */
  readonly against: string;
  readonly source: Source;
}

const seen = (id: string, title: string, at: string): Source => ({ id, title, at, status: "seen" });
const memory = (at: string): Source => ({
  id: "trade-memory",
  title: "Trade knowledge, from memory",
  at,
  status: "memory",
});
const WETLAND_TRAILS = "US Forest Service, Wetland Trail Design and Construction, 2007";

/** Every kind that a steward weighs, from none to the heaviest. */
export const walkwayFacts: readonly WalkwayFacts[] = [
  {
    kind: "no-structure",
    name: "No structure",
    make_up: "People walk on the ground, by turns on different lines or always on one.",
    removable: "nothing to remove",
    removal_note: "What was trampled stays visible for years.",
    against: "Where feet go in, every step breaks roots and peat; on one line a mud track forms.",
    source: seen(
      "small-docks",
      "Management of small docks and piers, public slides (cdn.slideserve.com/balin)",
      "avoid first, then lessen",
    ),
  },
  {
    kind: "another-season",
    name: "Another season",
    make_up: "The work is moved to frozen, dry or dormant months.",
    removable: "nothing to remove",
    removal_note: "Nothing is laid.",
    against: "The study may need the growing season, and thaw or a wet year undoes the plan.",
    source: memory("frozen or low-water access"),
  },
  {
    kind: "by-boat",
    name: "By boat",
    make_up: "A punt or canoe on creeks and pools, a short landing at the plot.",
    removable: "nothing to remove",
    removal_note: "A landing stage, if one is needed.",
    against:
      "Needs water at the hour of work, carries little, and wading from a boat in a marsh creek drowns people.",
    source: memory("creek access at high water"),
  },
  {
    kind: "ground-laid",
    name: "Laid on the ground",
    make_up: "Modules or planks flat on the ground, bearers loose, no posts.",
    removable: "yes",
    removal_note: "Lifted by hand.",
    against: "Shades and presses all it covers, and floats away where water stands.",
    source: seen(
      "paths-for-all",
      "Paths for All, boardwalks (pathsforall.org.uk)",
      "a version on loose cross-bearers has no posts at all",
    ),
  },
  {
    kind: "sleepers",
    name: "On sleepers",
    make_up: "Planks or modules 6 to 12 ft long on sleepers across the line, pinned where floods come.",
    removable: "yes",
    removal_note: "By hand; the pins (24 to 30 in) must come out too.",
    against: "Stands low: shade, and uplift in a flood; sinks in soft peat.",
    source: seen("fs-wetland-trails", WETLAND_TRAILS, "sleepers and drift pins, page 6"),
  },
  {
    kind: "open-crates",
    name: "On open crates",
    make_up: "Modules on open timber frames on runners, staked against floating.",
    removable: "yes",
    removal_note: "Frames lift off; stakes are pulled.",
    against: "More timber and contact than sleepers; tall crates tip.",
    source: seen(
      "fs-wetland-trails",
      WETLAND_TRAILS,
      "cribbing named as a foundation; an open one lets water through",
    ),
  },
  {
    kind: "post-pairs",
    name: "On post pairs",
    make_up: "Two posts under each joint, driven 600 mm and more or standing on plates, with a tie.",
    removable: "poorly",
    removal_note: "Driven posts are pulled with a jack; rammed stone around them stays behind.",
    against: "Driving disturbs the ground and depth is found only on the spot.",
    source: seen(
      "scottish-grant",
      "Scottish forestry grant scheme, timber boardwalk",
      "posts 100 x 100 mm, set 600 mm in",
    ),
  },
  {
    kind: "screw-piles",
    name: "On screw piles",
    make_up:
      "Steel shafts with a helix, turned in by portable gear: leads of 3.5, 5 or 7 ft, helices of 8 to 12 in.",
    removable: "yes",
    removal_note: "Unscrewed with the same gear.",
    against: "Costs the most for each support, needs trained installers and an engineer.",
    source: seen(
      "fs-screw-piles",
      "US Forest Service, foundations in wetlands (01232833 found03)",
      "helical piles",
    ),
  },
  {
    kind: "floats",
    name: "On floats",
    make_up: "Straight floating sections between anchors, two cables, an anchor more at each bend.",
    removable: "yes",
    removal_note: "Towed away; anchors lifted.",
    against:
      "Last resort: moves underfoot, is closed in rough water, lies on the plants when the water falls.",
    source: seen("fs-wetland-trails", WETLAND_TRAILS, "floating trails, page 9"),
  },
  {
    kind: "mats",
    name: "On mats",
    make_up: "Plastic or timber mats, or geogrid with fill.",
    removable: "poorly",
    removal_note: "Mats lift off; fabric and fill do not, and fill counts as fill.",
    against: "Covers the plants wholly; made for machines, heavy to carry (about 85 lb for 4 by 8 ft).",
    source: memory("ground mats and turnpike fill"),
  },
];
