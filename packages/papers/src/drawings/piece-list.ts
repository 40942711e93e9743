import type { DrawnPiece, PartDrawing } from "@causey/engine/kit";
import { stroked, words, type Box, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { textWidth, wrap } from "../text/index.ts";
import { partLength } from "./show.ts";

/** Letters by which the list and the views name pieces: alike pieces share one. */
export interface PieceMarks {
  readonly of: (piece: DrawnPiece) => string | null;
  readonly rows: readonly { readonly mark: string; readonly piece: DrawnPiece; readonly count: number }[];
}

const keyOf = (p: DrawnPiece): string => `${p.role}|${p.size ?? ""}|${p.length_mm}`;

/** One letter for each use, size and saw length, in the order in which the part is put together. */
export function pieceMarks(drawing: PartDrawing): PieceMarks {
  const found = new Map<string, { mark: string; piece: DrawnPiece; count: number }>();
  for (const piece of drawing.plan) {
    const row = found.get(keyOf(piece));
    if (row) row.count++;
    else found.set(keyOf(piece), { mark: letter(found.size), piece, count: 1 });
  }
  return { of: (piece) => found.get(keyOf(piece))?.mark ?? null, rows: [...found.values()] };
}

const letter = (n: number): string =>
  n < 26 ? String.fromCharCode(65 + n) : `${letter(Math.floor(n / 26) - 1)}${letter(n % 26)}`;

const SIZE = 2.2;
const LINE = 3.2;

interface PieceList {
  readonly shapes: readonly Shape[];
  /** Where the list ends [mm]. */
  readonly foot: number;
}

/** Pieces with mark, count, size and saw length; boards' spacing; screws by kind; where cross pieces are marked off. */
export function pieceList(
  context: PaperContext,
  drawing: PartDrawing,
  marks: PieceMarks,
  box: Box,
): PieceList {
  const columns = [0, 7, 13, 34, 44] as const;
  const rows = marks.rows.map(({ mark, piece, count }) => [
    mark,
    String(count),
    piece.role,
    piece.size ?? "",
    partLength(piece.length_mm / 1000, context.plan),
  ]);
  let y = box.y + 2.6;
  const shapes: Shape[] = [words("Pieces of one part", [box.x, y], { weight: "semibold", size: 2.6 })];
  y += 4.2;
  ["mark", "no.", "use", "size", "length"].forEach((head, i) =>
    shapes.push(words(head, [box.x + columns[i]!, y], { size: 1.9, ink: "second" })),
  );
  shapes.push(
    stroked(
      [
        [box.x, y + 1],
        [box.x + box.width, y + 1],
      ],
      { ink: "ink", width: 0.2 },
    ),
  );
  for (const cells of rows) {
    y += LINE;
    cells.forEach((text, i) =>
      shapes.push(
        words(text, [box.x + columns[i]!, y + 0.4], {
          size: fitting(text, (columns[i + 1] ?? box.width) - columns[i]! - 1),
          weight: i === 0 ? "semibold" : "regular",
        }),
      ),
    );
  }
  y += 4;
  for (const note of notesOf(context, drawing)) {
    for (const text of wrap(note, box.width, SIZE)) {
      y += 3;
      shapes.push(words(text, [box.x, y], { size: SIZE }));
    }
    y += 1.4;
  }
  return { shapes, foot: y };
}

const fitting = (text: string, room: number): number =>
  Math.min(SIZE, (SIZE * room) / Math.max(room, textWidth(text, SIZE)));

function notesOf(context: PaperContext, drawing: PartDrawing): string[] {
  const { plan, tables } = context;
  const { kit } = plan;
  const screws = new Map<string, number>();
  for (const s of drawing.screws) screws.set(s.item, (screws.get(s.item) ?? 0) + 1);
  const support = kit.supports.find((s) => drawing.name.startsWith(`${s.name}, `));
  for (const s of support?.screws ?? []) screws.set(s.screw, s.count);
  const names = [...screws].map(
    ([item, count]) => `${count} x ${tables.fasteners.find((f) => f.id === item)?.name ?? item}`,
  );
  const rows = drawing.chains.find((c) => c.id === "cross-pieces");
  const boards = boardNote(context, drawing);
  return [
    ...(rows
      ? [
          `Cross pieces, middles from the start end: ${rows.at_mm
            .slice(1, -1)
            .map((mm) => partLength(mm / 1000, plan))
            .join("; ")}.`,
        ]
      : []),
    ...(boards ? [boards] : []),
    ...(names.length > 0
      ? [
          `Fasteners: ${names.join("; ")}.${support ? "" : " Dots: driven from above; short lines: through the stringer's side."}`,
        ]
      : []),
    `Lumber: ${kit.lumber.species}, ${kit.lumber.grade}, ${kit.lumber.treatment === "none" ? "untreated" : "treated"}; look at the grade stamps.`,
    "Cut and drill off the marsh, over a sheet, with dust mask and gloves.",
  ];
}

/** How many boards, how wide, how far apart: as it comes out on this length. */
function boardNote({ plan }: PaperContext, drawing: PartDrawing): string | null {
  const boards = drawing.plan.filter((p) => p.role === "deck board").toSorted((a, b) => a.u0 - b.u0);
  const [first, second] = boards.filter((b, i, all) => i === 0 || b.u0 > all[i - 1]!.u0 + 0.01);
  if (!first || !second) return null;
  return `Deck boards ${partLength((first.u1 - first.u0) / 1000, plan)} wide, gaps of ${partLength((second.u0 - first.u1) / 1000, plan)}, first and last flush with the ends.`;
}
