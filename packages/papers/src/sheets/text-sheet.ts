import { flow, SIZE, type Block } from "../text/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Room, Sheet } from "../set/sheet.ts";

/** Text and tables as portrait pages, in the first of the sizes [mm] that brings them on one page, else in the last. */
export function textDrafts(
  title: string,
  content: readonly Block[],
  room: Room,
  sizes: readonly number[] = [SIZE],
): Draft[] {
  const fitting = sizes.find((size) => flow(content, room.portrait, size).length === 1);
  const pages = flow(content, room.portrait, fitting ?? sizes.at(-1) ?? SIZE);
  return pages.map((shapes, n): Draft => ({
    title: pages.length > 1 ? `${title}, ${n + 1} of ${pages.length}` : title,
    orientation: "portrait",
    scale: "not to scale",
    draw: () => shapes,
  }));
}

/**
 * A sheet of text and tables on as many portrait pages as it needs.
 *
 * sizes  heights of ordinary type [mm], largest first: the first that brings everything on one page is taken, the last
 *        when none does
 */
export const textSheet = (
  about: Pick<Sheet, "id" | "title" | "about">,
  blocks: (context: PaperContext) => readonly Block[],
  sizes: readonly number[] = [SIZE],
): Sheet => ({
  ...about,
  drafts: (context, room) => textDrafts(about.title, blocks(context), room, sizes),
});
