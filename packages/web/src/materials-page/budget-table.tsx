import type { Budget } from "@causey/engine/cost";
import { showMoney, type Reading } from "../show/show.ts";
import { RowsScroll } from "../frame/rows-scroll.tsx";

/** The budget line by line in the year it is paid, with each year's sum. */
export function BudgetTable({ budget, reading }: { readonly budget: Budget; readonly reading: Reading }) {
  const money = (amount: number): string => showMoney(amount, reading);
  return (
    <RowsScroll label="Budget, scrolls">
      <table className="rows-table" aria-label="Budget by year">
        <thead>
          <tr>
            <th scope="col">Year</th>
            <th scope="col">Line</th>
            <th scope="col" className="number">
              Low
            </th>
            <th scope="col" className="number">
              Middle
            </th>
            <th scope="col" className="number">
              High
            </th>
            <th scope="col">Note</th>
          </tr>
        </thead>
        {budget.years.map((year) => (
          <tbody key={year.year}>
            {budget.entries
              .filter((e) => e.year === year.year)
              .map((e) => (
                <tr key={e.id}>
                  <td>{e.year}</td>
                  <th scope="row">{e.title}</th>
                  <td className="number">{e.low === e.mid ? "" : money(e.low)}</td>
                  <td className="number">{money(e.mid)}</td>
                  <td className="number">{e.high === e.mid ? "" : money(e.high)}</td>
                  <td className="quiet">{e.note}</td>
                </tr>
              ))}
            <tr className="row-sum">
              <td>{year.year}</td>
              <th scope="row">Sum of the year</th>
              <td className="number">{money(year.low)}</td>
              <td className="number">{money(year.mid)}</td>
              <td className="number">{money(year.high)}</td>
              <td>–</td>
            </tr>
          </tbody>
        ))}
        <tfoot>
          <tr className="row-sum">
            <td>all</td>
            <th scope="row">The whole project</th>
            <td className="number">{money(budget.low)}</td>
            <td className="number">{money(budget.mid)}</td>
            <td className="number">{money(budget.high)}</td>
            <td>
              {money(budget.cash)} to be paid ({money(budget.cash_low)} to {money(budget.cash_high)});{" "}
              {budget.donated_hours.toFixed(0)} volunteers&apos; hours count {money(budget.donated_value)} (
              {budget.donated_hours_low.toFixed(0)} to {budget.donated_hours_high.toFixed(0)} hours,{" "}
              {money(budget.donated_value_low)} to {money(budget.donated_value_high)})
            </td>
          </tr>
        </tfoot>
      </table>
    </RowsScroll>
  );
}
