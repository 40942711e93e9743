import { flow, SIZE, type Block } from "../text/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Sheet } from "../set/sheet.ts";

/**
 * A sheet of text and tables on as many portrait pages as it needs.
 *
 * sizes  heights of ordinary type [mm], largest first: the first that brings everything on one page is taken, the last
 *        when none does
 */
export function textSheet(
  about: Pick<Sheet, "id" | "title" | "about">,
  blocks: (context: PaperContext) => readonly Block[],
  sizes: readonly number[] = [SIZE],
): Sheet {
  return {
    ...about,
    drafts: (context, room) => {
      const content = blocks(context);
      const fitting = sizes.find((size) => flow(content, room.portrait, size).length === 1);
      const pages = flow(content, room.portrait, fitting ?? sizes.at(-1) ?? SIZE);
      return pages.map((shapes, n): Draft => ({
        title: pages.length > 1 ? `${about.title}, ${n + 1} of ${pages.length}` : about.title,
        orientation: "portrait",
        scale: "not to scale",
        draw: () => shapes,
      }));
    },
  };
}
