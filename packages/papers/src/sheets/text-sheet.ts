import { flow, SIZE, type Block } from "../text/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Sheet } from "../set/sheet.ts";

/** A sheet of text and tables on as many portrait pages as it needs. */
export function textSheet(
  about: Pick<Sheet, "id" | "title" | "about">,
  blocks: (context: PaperContext) => readonly Block[],
  size = SIZE,
): Sheet {
  return {
    ...about,
    drafts: (context, room) => {
      const pages = flow(blocks(context), room.portrait, size);
      return pages.map((shapes, n): Draft => ({
        title: pages.length > 1 ? `${about.title}, ${n + 1} of ${pages.length}` : about.title,
        orientation: "portrait",
        scale: "not to scale",
        draw: () => shapes,
      }));
    },
  };
}
