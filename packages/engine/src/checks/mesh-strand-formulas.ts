import { defineFormula, type Source } from "../formula/index.ts";

const project = (at: string): Source => ({
  id: "causey-mesh",
  title: "Project rule on mesh decks",
  at,
  status: "project",
});

/** Wire that rust has left. d new wire, r loss of its surface in a year [m], y years [1]; d_y [m], 0 when it is gone. */
export const wireLeft = defineFormula(
  {
    id: "mesh.wire-left",
    title: "Wire that rust has left",
    symbol: "d_y",
    unit: "m",
    text: "max(0, d - 2 * r * y)",
    inputs: { d: "m", r: "m", y: "1" },
    validity: "Even loss all round, r in a year.",
    source: project("the surface goes back on both sides of the wire"),
  },
  ({ d, r, y }) => Math.max(0, d - 2 * r * y),
);

/** Pull on one staple or screw of the line that holds the strands. T [N] a strand, n loaded strands, k strands on one [1]; F [N]. */
export const pullOnFastener = defineFormula(
  {
    id: "mesh.fastener-pull",
    title: "Pull on one fastener of the line that holds the mesh",
    symbol: "F_s",
    unit: "N",
    text: "T * max(1, min(n, k))",
    inputs: { T: "N", n: "1", k: "1" },
    validity:
      "k is the spacing of the fasteners over the pitch; closer fasteners than strands do not share one strand.",
    source: project("a fastener holds the loaded strands within its spacing, and at least one"),
  },
  ({ T, n, k }) => T * Math.max(1, Math.min(n, k)),
);

export const meshStrandFormulas = [wireLeft, pullOnFastener] as const;
