import { Table } from "@mantine/core";
import type { CheckResult } from "@causey/engine/checks";
import { show, type Reading } from "../show/show.ts";
import { statusLine, tagWords, type CheckGroup } from "./check-words.ts";
import { ShareBar } from "./share-bar.tsx";

interface Props {
  readonly groups: readonly CheckGroup[];
  readonly reading: Reading;
  readonly chosen: string | null;
  readonly concerns: (check: CheckResult) => boolean;
  readonly onChoose: (check: string) => void;
  readonly onPoint: (check: CheckResult | null) => void;
}

/** All checks, gathered by part kind, the ones of concern first. */
export function CheckTable({ groups, reading, chosen, concerns, onChoose, onPoint }: Props) {
  return (
    <Table className="check-table" stickyHeader>
      <Table.Thead>
        <Table.Tr>
          <Table.Th scope="col">Check</Table.Th>
          <Table.Th scope="col">Parts</Table.Th>
          <Table.Th scope="col">Demand of capacity</Table.Th>
          <Table.Th scope="col">Share of the limit</Table.Th>
          <Table.Th scope="col">Status</Table.Th>
        </Table.Tr>
      </Table.Thead>
      {groups.map((group) => (
        <Table.Tbody key={group.title}>
          <Table.Tr className="check-group">
            <Table.Th scope="rowgroup" colSpan={5}>
              {group.title}
            </Table.Th>
          </Table.Tr>
          {group.checks.map((check) => (
            <Table.Tr
              key={check.id}
              data-check={check.id}
              className={`check-row check-${check.status}${check.id === chosen ? " check-chosen" : ""}${concerns(check) ? " check-pointed" : ""}`}
              onPointerEnter={() => onPoint(check)}
              onPointerLeave={() => onPoint(null)}
            >
              <Table.Td>
                <button
                  type="button"
                  className="plain-button check-name"
                  aria-pressed={check.id === chosen}
                  onClick={() => onChoose(check.id)}
                  onFocus={() => onPoint(check)}
                  onBlur={() => onPoint(null)}
                >
                  {check.title}
                </button>
              </Table.Td>
              <Table.Td className="check-parts" data-label="Parts">
                {tagWords(check.parts)}
              </Table.Td>
              <Figures check={check} reading={reading} />
              <Table.Td className="check-status" data-label="Status">
                {statusLine(check)}
                {"from_memory" in check && check.from_memory && (
                  <span className="source-mark">from memory, confirm</span>
                )}
              </Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      ))}
    </Table>
  );
}

function Figures({ check, reading }: { readonly check: CheckResult; readonly reading: Reading }) {
  if (check.status !== "pass" && check.status !== "fail")
    return (
      <>
        <Table.Td className="check-none" />
        <Table.Td className="check-none" />
      </>
    );
  return (
    <>
      <Table.Td data-label="Demand of capacity">
        {show(check.demand, check.unit, reading)} of {show(check.capacity, check.unit, reading)}
      </Table.Td>
      <Table.Td data-label="Share of the limit">
        <ShareBar utilisation={check.utilisation} />
      </Table.Td>
    </>
  );
}
