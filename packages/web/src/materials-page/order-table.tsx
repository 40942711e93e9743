import { tables } from "@causey/data/tables";
import type { Cost } from "@causey/engine/cost";
import { M_PER_IN } from "@causey/engine/units";
import { show, showMoney, type Reading } from "../show/show.ts";
import { RowsScroll } from "../frame/rows-scroll.tsx";

/** What is bought, with the nominal and the actual size of lumber side by side. */
export function OrderTable({ cost, reading }: { readonly cost: Cost; readonly reading: Reading }) {
  return (
    <RowsScroll label="Order list, scrolls">
      <table className="rows-table order-table" aria-label="Order list">
        <thead>
          <tr>
            <th scope="col">Item</th>
            <th scope="col">Actual size</th>
            <th scope="col">Length</th>
            <th scope="col" className="number">
              To buy
            </th>
            <th scope="col" className="number">
              Needed
            </th>
            <th scope="col" className="number">
              Each
            </th>
            <th scope="col" className="number">
              Amount
            </th>
            <th scope="col">Price of</th>
          </tr>
        </thead>
        <tbody>
          {cost.order.map((line) => (
            <tr key={`${line.item} ${line.length_mm}`}>
              <th scope="row">
                {line.item} <span className="quiet">{line.description}</span>
              </th>
              <td data-head="Actual size">{actualSize(line.item, reading)}</td>
              <td data-head="Length">
                {line.length_mm === null ? "" : show(line.length_mm / 1000, "m", reading)}
              </td>
              <td className="number" data-head="To buy">
                {line.quantity}
              </td>
              <td className="number" data-head="Needed">
                {line.needed}
              </td>
              <td className="number" data-head="Each">
                {showMoney(line.unit_price, reading)}
              </td>
              <td className="number order-amount" data-head="Amount">
                {showMoney(line.amount, reading)}
              </td>
              <td data-head="Price of">{line.price_date}</td>
            </tr>
          ))}
          {cost.unpriced.map((line) => (
            <tr key={line.item} className="row-open">
              <th scope="row">{line.item}</th>
              <td data-head="Actual size">{actualSize(line.item, reading)}</td>
              <td data-head="Length">–</td>
              <td data-head="To buy">–</td>
              <td className="number" data-head="Needed">
                {line.needed}
              </td>
              <td colSpan={3} className="order-open">
                no price in the list: left out of every sum
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </RowsScroll>
  );
}

/** The dressed size behind a nominal one; empty for what is not lumber. */
function actualSize(item: string, { units }: Reading): string {
  const size = tables.sizes.find((s) => s.id === item);
  if (!size) return "";
  const inches = [size.thickness_in, size.width_in];
  return units === "us"
    ? `${inches.map((v) => Number(v.toFixed(3))).join(" x ")} in`
    : `${inches.map((v) => Math.round(v * M_PER_IN * 1000)).join(" x ")} mm`;
}
