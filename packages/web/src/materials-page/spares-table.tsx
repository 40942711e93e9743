import type { SpareModules } from "@causey/engine/layout";
import { show, type Reading } from "../show/show.ts";
import { RowsScroll } from "../frame/rows-scroll.tsx";

interface Props {
  readonly spares: readonly SpareModules[];
  readonly reading: Reading;
}

/** Modules that are built over and above the layout, by length. */
export function SparesTable({ spares, reading }: Props) {
  return (
    <RowsScroll label="Spare modules, scrolls">
      <table className="rows-table" aria-label="Spare modules">
        <thead>
          <tr>
            <th scope="col">Module</th>
            <th scope="col" className="number">
              In the walkway
            </th>
            <th scope="col" className="number">
              Spare, for the shelf
            </th>
          </tr>
        </thead>
        <tbody>
          {spares.map((s) => (
            <tr key={s.length_m}>
              <th scope="row">{show(s.length_m, "m", reading)}</th>
              <td className="number">{s.in_layout}</td>
              <td className="number">{s.spares}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </RowsScroll>
  );
}
