import type { TakeOff } from "@causey/engine/materials";
import { show, type Reading } from "../show/show.ts";
import { RowsScroll } from "../frame/rows-scroll.tsx";

/** Every piece that is sawn, and everything counted. */
export function TakeOffTable({ takeOff, reading }: { readonly takeOff: TakeOff; readonly reading: Reading }) {
  return (
    <RowsScroll label="Take-off, scrolls">
      <table className="rows-table" aria-label="Take-off">
        <thead>
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Length</th>
            <th scope="col" className="number">
              Count
            </th>
            <th scope="col">For</th>
          </tr>
        </thead>
        <tbody>
          {takeOff.timber.map((line) => (
            <tr key={`${line.size} ${line.length_mm}`}>
              <th scope="row">{line.size}</th>
              <td>{show(line.length_mm / 1000, "m", reading)}</td>
              <td className="number">{line.count}</td>
              <td>{line.uses.map((u) => `${u.count} ${u.use}`).join(", ")}</td>
            </tr>
          ))}
          {takeOff.counted.map((line) => (
            <tr key={line.item}>
              <th scope="row">{line.name}</th>
              <td>by the piece</td>
              <td className="number">{line.count}</td>
              <td>–</td>
            </tr>
          ))}
        </tbody>
      </table>
    </RowsScroll>
  );
}
