import type { AreaTool } from "./use-area-tool.ts";
import { toPicture, type Size, type View, type XY } from "./view.ts";

interface Props {
  readonly tool: AreaTool;
  readonly map: { readonly view: View; readonly size: Size };
}

/** The outline being drawn, with the cross. */
export function AreaSketch({ tool, map }: Props) {
  const at = (p: XY): XY => toPicture(map.view, map.size, p);
  const corners = tool.points.map(at);
  const cross = tool.cursor && at(tool.cursor);
  const line = [...corners, ...(cross ? [cross] : [])];
  return (
    <g className="area-sketch" pointerEvents="none" aria-hidden="true">
      {line.length > 1 && (
        <path
          className={tool.shape === "area" ? "area-line" : "area-line area-line-open"}
          d={`M${line.map((p) => p.join(" ")).join("L")}${tool.shape === "area" ? "Z" : ""}`}
        />
      )}
      {corners.map(([x, y]) => (
        <rect key={`${x} ${y}`} className="area-corner" x={x - 3.5} y={y - 3.5} width="7" height="7" />
      ))}
      {cross && (
        <path className="area-cross" d={`M${cross[0] - 12} ${cross[1]}h24M${cross[0]} ${cross[1] - 12}v24`} />
      )}
    </g>
  );
}
