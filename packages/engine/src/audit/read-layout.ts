import { holdAgainst, type Fault } from "./fault.ts";
import { Feature, isObject, type Members } from "./feature.ts";
import type {
  ClaimedReach,
  LaidBranch,
  LaidFoot,
  LaidJoint,
  LaidModule,
  LaidOut,
  LaidPlatform,
  RuleReport,
} from "./types.ts";

const readModule = (f: Feature): LaidModule => ({
  id: f.text("id"),
  branch: f.text("branch"),
  length_m: f.number("length_m"),
  heading_deg: f.number("heading_deg"),
  from: f.text("from"),
  to: f.text("to"),
  along_m: f.number("along_m"),
  outline: f.outline(),
});

const readPlatform = (f: Feature): LaidPlatform => ({
  id: f.text("id"),
  branch: f.text("branch"),
  side_m: f.number("side_m"),
  heading_deg: f.number("heading_deg"),
  from: f.text("from"),
  ahead: f.text("ahead"),
  left: f.text("left"),
  right: f.text("right"),
  outline: f.outline(),
});

function readJoint(f: Feature): LaidJoint {
  const [x, y] = f.point();
  return {
    id: f.text("id"),
    x,
    y,
    branch: f.text("branch"),
    along_m: f.number("along_m"),
    ground_m: f.number("ground_m"),
    deck_m: f.number("deck_m"),
    support: f.text("support"),
    support_height_m: f.number("support_height_m"),
  };
}

const readFoot = (f: Feature): LaidFoot => ({
  joint: f.text("joint"),
  index: f.number("index"),
  outline: f.outline(),
});
const readBranch = (f: Feature): LaidBranch => ({
  id: f.text("id"),
  from: f.text("from"),
  to_plot: f.textOrNothing("to_plot"),
});

/**
 * Reads a layout back from its parsed file: a FeatureCollection whose features carry `properties.kind`.
 *
 * module    Polygon, body in plan      id, branch, length_m, heading_deg, from, to (joint ids), along_m
 * platform  Polygon                    id, branch, side_m, heading_deg, from, ahead, left, right (joint ids)
 * joint     Point                      id, heading_deg, branch, along_m, ground_m, deck_m, support, support_height_m
 * foot      Polygon, patch on ground   joint, index (its place in the support kind's list)
 * branch    LineString                 id, from (start or platform), to_plot (empty: it leads to no plot)
 * and the member `reached`: a list of { plot, joint, distance_m }. Lengths in metres, headings in degrees clockwise
 * from grid north. What cannot be read is a problem of the rule "format", as is an id given twice or never defined.
 */
export function readLayout(layout: unknown): { readonly laid: LaidOut; readonly report: RuleReport } {
  const modules: LaidModule[] = [];
  const platforms: LaidPlatform[] = [];
  const joints = new Map<string, LaidJoint>();
  const feet: LaidFoot[] = [];
  const branches: LaidBranch[] = [];
  const reached: ClaimedReach[] = [];
  const laid: LaidOut = { modules, platforms, joints, feet, branches, reached };
  const report = holdAgainst("format", (fault, tested) => {
    const whole = isObject(layout) ? layout : {};
    const keep = <T>(f: Feature, list: T[], item: T): unknown => f.sound && list.push(item);
    listOf(whole, "features", fault).forEach((raw, i) => {
      tested();
      const f = new Feature(raw, i, fault);
      if (f.kind === "module") keep(f, modules, readModule(f));
      else if (f.kind === "platform") keep(f, platforms, readPlatform(f));
      else if (f.kind === "foot") keep(f, feet, readFoot(f));
      else if (f.kind === "branch") keep(f, branches, readBranch(f));
      else if (f.kind === "joint") addJoint(joints, readJoint(f), f, fault);
      else
        fault(
          f.place,
          f.kind,
          "a kind of feature that a layout does not have",
          "Use module, platform, joint, foot or branch.",
        );
    });
    listOf(whole, "reached", fault).forEach((raw, i) => {
      tested();
      const f = new Feature({ properties: raw }, i, fault);
      keep(f, reached, {
        plot: f.text("plot"),
        joint: f.text("joint"),
        distance_m: f.number("distance_m"),
      });
    });
    checkNames(laid, fault);
  });
  return { laid, report };
}

function listOf(whole: Members, key: string, fault: Fault): readonly unknown[] {
  const list = whole[key];
  if (Array.isArray(list)) return list;
  fault(key, String(list), `the layout has no list "${key}"`, `Write "${key}", empty if there is nothing.`);
  return [];
}

function addJoint(joints: Map<string, LaidJoint>, joint: LaidJoint, f: Feature, fault: Fault): void {
  if (joints.has(joint.id))
    fault(f.place, joint.id, "two joints have one id", "Give each joint an id of its own.");
  if (f.sound) joints.set(joint.id, joint);
}

function checkNames(laid: LaidOut, fault: Fault): void {
  const parts = [...laid.modules, ...laid.platforms];
  const seen = new Set<string>();
  for (const part of parts) {
    if (seen.has(part.id))
      fault(part.id, part.id, "two parts have one id", "Give each part an id of its own.");
    seen.add(part.id);
  }
  const known = (place: string, joint: string): void => {
    if (!laid.joints.has(joint)) fault(place, joint, `there is no joint "${joint}"`, "Write the joint.");
  };
  for (const m of laid.modules) [m.from, m.to].forEach((joint) => known(m.id, joint));
  for (const p of laid.platforms) [p.from, p.ahead, p.left, p.right].forEach((joint) => known(p.id, joint));
  for (const foot of laid.feet) known(`foot ${foot.index} of ${foot.joint}`, foot.joint);
  const branches = new Set(laid.branches.map((b) => b.id));
  for (const part of parts)
    if (!branches.has(part.branch))
      fault(part.id, part.branch, `there is no branch "${part.branch}"`, "Write the branch.");
}
