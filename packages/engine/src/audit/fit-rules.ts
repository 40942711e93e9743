import { holdAgainst, metresText, type Fault } from "./fault.ts";
import { middle, overlapDepth, reachAlong } from "./shapes.ts";
import { FIT_M } from "./tolerance.ts";
import type { AuditInput, LaidModule, LaidOut, LaidPlatform, Outline, RuleReport, Spot } from "./types.ts";

/** Unit vector of a heading, clockwise from grid north: east, north. */
function direction(heading_deg: number): Spot {
  const angle = (heading_deg / 180) * Math.PI;
  return [Math.sin(angle), Math.cos(angle)];
}

/** Size of an outline along a direction. */
function extent(outline: Outline, [ux, uy]: Spot): number {
  const [low, high] = reachAlong(outline, ux, uy);
  return high - low;
}

/** No two parts overlap; neighbours may touch. */
export const partsApart = (_input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("part-overlap", (fault, tested) => {
    const parts = [...laid.modules, ...laid.platforms];
    parts.forEach((a, i) =>
      parts.slice(0, i).forEach((b) => {
        tested();
        const depth = overlapDepth(a.outline, b.outline);
        if (depth >= FIT_M)
          fault(`${b.id} and ${a.id}`, metresText(depth), "two parts lie in one place", "Move one of them.");
      }),
    );
  });

/** No support overlaps the support of another joint. */
export const supportsApart = (_input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("support-overlap", (fault, tested) => {
    laid.feet.forEach((a, i) =>
      laid.feet.slice(0, i).forEach((b) => {
        if (a.joint === b.joint) return;
        tested();
        const depth = overlapDepth(a.outline, b.outline);
        if (depth >= FIT_M)
          fault(
            `${b.joint} and ${a.joint}`,
            metresText(depth),
            "two supports stand in one place",
            "Use one joint, or move one of them.",
          );
      }),
    );
  });

/** A module is one of the kit's lengths; its joints are its pitch apart, on its middle line, half a gap off its ends. */
export const modulesOnPitch = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("pitch", (fault, tested) => {
    for (const m of laid.modules) {
      tested();
      if (!input.kit.lengths_mm.some((l) => Math.abs(l / 1000 - m.length_m) <= FIT_M))
        fault(
          m.id,
          metresText(m.length_m),
          "is not a length of the kit",
          `Use ${input.kit.lengths_mm.join(", ")} mm.`,
        );
      const [from, to] = [laid.joints.get(m.from), laid.joints.get(m.to)];
      if (!from || !to) continue;
      const [ux, uy] = direction(m.heading_deg);
      const pitch = m.length_m + input.kit.joint_gap_mm / 1000;
      const miss = Math.hypot(to.x - from.x - pitch * ux, to.y - from.y - pitch * uy);
      if (miss > FIT_M)
        fault(
          m.id,
          metresText(miss),
          `its joints are not ${metresText(pitch)} apart along its heading`,
          `Put ${m.to} one pitch from ${m.from}.`,
        );
      outlineOfModule(m, [(from.x + to.x) / 2, (from.y + to.y) / 2], fault);
    }
  });

function outlineOfModule(m: LaidModule, half: Spot, fault: Fault): void {
  const [x, y] = middle(m.outline);
  const off = Math.hypot(x - half[0], y - half[1]);
  const long = extent(m.outline, direction(m.heading_deg)) - m.length_m;
  if (off > FIT_M || Math.abs(long) > FIT_M)
    fault(
      m.id,
      `${metresText(off)} off, ${metresText(long)} too long`,
      "its outline does not lie between its joints",
      "Draw the body centred on the line from joint to joint.",
    );
}

/** A platform is the kit's; its joints lie at the middles of its edges, half a gap outside. */
export const platformsOnJoints = (input: AuditInput, laid: LaidOut): RuleReport =>
  holdAgainst("platform-edge", (fault, tested) => {
    for (const p of laid.platforms) {
      tested();
      outlineOfPlatform(p, input.kit.platform.side_mm / 1000, fault);
      const [x, y] = middle(p.outline);
      const off = (p.side_m + input.kit.joint_gap_mm / 1000) / 2;
      const turns = [
        [p.from, 180],
        [p.ahead, 0],
        [p.left, -90],
        [p.right, 90],
      ] as const;
      for (const [id, turn] of turns) {
        const joint = laid.joints.get(id);
        const [ux, uy] = direction(p.heading_deg + turn);
        const miss = joint ? Math.hypot(joint.x - x - off * ux, joint.y - y - off * uy) : 0;
        if (miss > FIT_M)
          fault(
            `${p.id}, ${id}`,
            metresText(miss),
            "the joint is not at the middle of the platform's edge",
            `Put it ${metresText(off)} from the platform's middle.`,
          );
      }
    }
  });

function outlineOfPlatform(p: LaidPlatform, side: number, fault: Fault): void {
  const sizes = [
    extent(p.outline, direction(p.heading_deg)),
    extent(p.outline, direction(p.heading_deg + 90)),
  ];
  if (Math.abs(p.side_m - side) > FIT_M || sizes.some((v) => Math.abs(v - p.side_m) > FIT_M))
    fault(
      p.id,
      sizes.map(metresText).join(" by "),
      `the platform's side is ${metresText(side)}`,
      "Draw it so.",
    );
}
