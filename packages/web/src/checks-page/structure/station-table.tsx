import { Table } from "@mantine/core";
import type { FrameDrawing } from "@causey/engine/checks";
import type { UnitSystem } from "@causey/engine/units";
import { EFFECTS, effectTitles } from "@causey/papers/drawings";
import { stationRows } from "./station-rows.ts";

interface Props {
  readonly frame: FrameDrawing;
  readonly units: UnitSystem;
}

/** The lines of the drawing in figures, for those who do not see it. */
export const StationTable = ({ frame, units }: Props) => (
  // The table scrolls by itself, so it can be reached by keys.
  // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
  <section className="station-scroll" tabIndex={0} aria-label="Figures along the module">
    <Table className="station-table" stickyHeader>
      <Table.Thead>
        <Table.Tr>
          <Table.Th scope="col">From the start</Table.Th>
          {EFFECTS.map((effect) => (
            <Table.Th key={effect} scope="col">
              {effectTitles[effect]}
            </Table.Th>
          ))}
        </Table.Tr>
      </Table.Thead>
      <Table.Tbody>
        {stationRows(frame, units).map((row) => (
          <Table.Tr key={row.at}>
            <Table.Th scope="row">{row.at}</Table.Th>
            {EFFECTS.map((effect) => (
              <Table.Td key={effect}>{row.values[effect]}</Table.Td>
            ))}
          </Table.Tr>
        ))}
      </Table.Tbody>
    </Table>
    <p className="quiet">
      Moment: the worse of hinged and stiff cross pieces. Shear and sag: stiff ones; a peak with hinged ones
      may lie a little beyond.
    </p>
  </section>
);
