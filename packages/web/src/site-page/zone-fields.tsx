import type { Plan } from "@causey/engine/plan";
import type { Zone } from "@causey/engine/site";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { RowEditor, type Column } from "../fields/row-editor.tsx";
import { useSection } from "../fields/use-section.ts";
import { zoneUseWords } from "../map/zone-style.ts";
import { HARM_WORDS } from "./layer-import/layer-kinds.ts";
import { LayerImportButton } from "./layer-import/layer-import-button.tsx";

const columns: readonly Column<Zone>[] = [
  { key: "name", label: "Name", as: "text", required: true },
  {
    key: "use",
    label: "Rule",
    as: "choice",
    choices: Object.entries(zoneUseWords).map(([value, words]) => ({ value, words })),
  },
  {
    key: "sensitivity",
    label: "Harm per area",
    description: HARM_WORDS,
    as: "optional-number",
    empty: undefined,
    when: (z) => z.use === "habitat",
  },
  { key: "from", label: "First day", as: "month-day", when: (z) => z.use === "seasonal-closure" },
  { key: "to", label: "Last day", as: "month-day", when: (z) => z.use === "seasonal-closure" },
  {
    key: "buffer_m",
    label: "Kept clear around it",
    as: "optional-length",
    empty: undefined,
    when: (z) => z.use !== "parcel" && z.use !== "habitat",
  },
  {
    key: "water",
    label: "What water it is",
    as: "choice",
    choices: [
      { value: "", words: "not told" },
      ...["creek", "ditch", "pool", "panne"].map((word) => ({ value: word, words: word })),
    ],
    when: (z) => z.use === "channel" || z.use === "pool",
  },
  { key: "owner", label: "Owner", as: "text", when: (z) => z.use === "parcel" },
  { key: "contact", label: "Whom to ask", as: "text" },
  { key: "source", label: "Source", as: "text", required: true },
  {
    key: "hidden",
    label: "Hidden",
    description: "Used in the search, never in a shared paper.",
    as: "yes",
  },
];

/** Every area with its rule, its days, its buffer, and whom to ask about it. */
export function ZoneFields({ plan }: { readonly plan: Plan }) {
  const { value: zones, take } = useSection(plan, "zones");
  return (
    <FieldGroup title="Areas" note="New ones are drawn on the map, or brought in from a file.">
      <LayerImportButton target="zones" plan={plan} />
      <RowEditor<Zone>
        noun="area"
        rows={zones}
        columns={columns}
        units={plan.units}
        titleOf={(z) => z.name}
        onTake={(rows) => take(rows.map(withoutEmptyText))}
      />
    </FieldGroup>
  );
}

/** An entry that was emptied is left out. */
const withoutEmptyText = (zone: Zone): Zone =>
  Object.fromEntries(
    Object.entries(zone).filter(
      ([key, value]) => value !== "" || !["from", "to", "owner", "contact", "water"].includes(key),
    ),
  ) as unknown as Zone;
