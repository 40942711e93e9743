import type { OptionLine } from "@causey/engine/options";
import type { Source } from "@causey/engine/formula";
import type { Block } from "../text/index.ts";
import { textSheet } from "./text-sheet.ts";

/** Every kind of walkway with what was decided and why: the avoid-and-lessen order that a permit asks about. */
export const alternativesSheet = textSheet(
  {
    id: "alternatives",
    title: "Alternatives",
    about: "Every kind of walkway, no structure among them: what was decided, why, and what this place says.",
  },
  ({ results }) => alternativeBlocks(results.options),
);

/** The alternatives as blocks of text, no structure first, so that they may stand on other papers too. */
export function alternativeBlocks(options: readonly OptionLine[]): Block[] {
  const open = options.filter((o) => o.status === "not looked at" || o.is_reason_missing);
  return [
    {
      kind: "text",
      text: "Harm is avoided first and lessened second: what could be done without a structure, at another time or from the water comes before what is built.",
    },
    {
      kind: "table",
      columns: [
        { head: "Kind", share: 1.6 },
        { head: "Decision", share: 1.2 },
        { head: "Reason given", share: 3 },
        { head: "Can it come out", share: 2.2 },
        { head: "Against it", share: 3 },
      ],
      rows: options.map((o) => [
        o.name,
        o.status,
        o.reason || (o.status === "not looked at" || o.status === "open" ? "none yet" : "missing"),
        `${o.removable}. ${o.removal_note}`,
        o.against,
      ]),
    },
    ...options.filter((o) => o.notes.length + o.warnings.length > 0).flatMap(placeBlocks),
    ...(open.length === 0
      ? []
      : [
          {
            kind: "text",
            bullet: true,
            text: `To be settled before the papers go out: ${open.map((o) => o.name).join(", ")}.`,
          } as const,
        ]),
    { kind: "head", text: "Sources" },
    ...sourcesOf(options).map(({ title, at, status }): Block => ({
      kind: "text",
      bullet: true,
      quiet: true,
      text: `${title}${at ? `: ${at}` : ""}${status === "memory" ? " (from memory, confirm)" : ""}.`,
    })),
  ];
}

/** What this place says about one kind, warnings marked as such. */
const placeBlocks = ({ name, notes, warnings }: OptionLine): Block[] => [
  { kind: "head", text: name },
  ...notes.map((text): Block => ({ kind: "text", text, bullet: true })),
  ...warnings.map((w): Block => ({ kind: "text", text: `Warning: ${w.text}`, bullet: true })),
];

function sourcesOf(options: readonly OptionLine[]): Source[] {
  const all = options.flatMap((o) => [o.source, ...o.warnings.map((w) => w.source)]);
  return [...new Map(all.map((s) => [`${s.id} ${s.at ?? ""}`, s])).values()];
}
