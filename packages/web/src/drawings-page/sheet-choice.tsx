import { Checkbox } from "@mantine/core";
import { sheetList } from "@causey/papers/sheet-list";
import type { DrawnSheets } from "../papers/protocol.ts";

interface Props {
  readonly chosen: readonly string[];
  readonly drawn: DrawnSheets | null;
  readonly onChoose: (ids: readonly string[]) => void;
  readonly onOpen: (page: number) => void;
}

/** Which kinds of sheets the set holds; a drawn one can be opened from here. */
export function SheetChoice({ chosen, drawn, onChoose, onOpen }: Props) {
  return (
    <fieldset className="sheet-choice">
      <legend className="unseen">Sheets</legend>
      {sheetList.map((sheet) => {
        const pages = drawn?.sheets.find((s) => s.id === sheet.id)?.pages ?? [];
        return (
          <div key={sheet.id} className="sheet-line">
            <Checkbox
              label={sheet.title}
              description={sheet.about}
              checked={chosen.includes(sheet.id)}
              onChange={(e) =>
                onChoose(
                  e.currentTarget.checked ? [...chosen, sheet.id] : chosen.filter((id) => id !== sheet.id),
                )
              }
            />
            {pages.length > 0 && (
              <button type="button" className="plain-button tool" onClick={() => onOpen(pages[0]!)}>
                open<span className="unseen"> {sheet.title}</span>
              </button>
            )}
          </div>
        );
      })}
    </fieldset>
  );
}
