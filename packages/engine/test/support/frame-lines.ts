import {
  assemble,
  beamForces,
  displacements,
  factorContact,
  reactions,
  type Bearing,
  type Beam,
  type Contact,
  type Grillage,
  type NodeLoad,
} from "../../src/grillage/index.ts";

/** A straight line of equal beams along x, with bearings at the given nodes. */
export function beamLine(
  length: number,
  parts: number,
  beam: Pick<Beam, "ei" | "ga" | "gj">,
  bearings: readonly (number | Bearing)[],
): Grillage {
  return {
    nodes: Array.from({ length: parts + 1 }, (_, i) => ({ x: (i * length) / parts, y: 0 })),
    beams: Array.from({ length: parts }, (_, i) => ({ ...beam, from: i, to: i + 1 })),
    bearings: bearings.map((b) => (typeof b === "number" ? { node: b, settled_m: 0 } : b)),
  };
}

/** Uniform load of a line as forces on its nodes: moments at nodes are exact, sag within (1/parts)^2. */
export function uniformLoads({ nodes, beams }: Grillage, w: number): NodeLoad[] {
  const down = nodes.map(() => 0);
  for (const { from, to } of beams) {
    const L = nodes[to]!.x - nodes[from]!.x;
    down[from]! += (w * L) / 2;
    down[to]! += (w * L) / 2;
  }
  return down.map((force, node) => ({ node, down: force }));
}

export function solved(grillage: Grillage, loads: readonly NodeLoad[], contact?: Contact) {
  const system = factorContact(assemble(grillage), contact ?? grillage.bearings.map(() => true));
  const u = displacements(system, loads);
  return {
    system,
    u,
    w: (node: number) => u[node * 3]!,
    reactions: reactions(system, u, loads),
    forces: grillage.beams.map((_, e) => beamForces(system, e, u)),
  };
}
