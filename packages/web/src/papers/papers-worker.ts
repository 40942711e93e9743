import semibold from "@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf?url";
import regular from "@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url";
import { tables } from "@causey/data/tables";
import { writePlan } from "@causey/io/plan";
import { withoutHidden } from "@causey/io/results";
import { toSvg } from "@causey/papers/scene-svg";
import { paperPdf, paperSet } from "@causey/papers/set";
import { readWholePlan } from "@causey/runtime/derive";
import type { PaperAnswer, PaperRequest } from "./protocol.ts";

const bytesOf = async (address: string): Promise<Uint8Array> =>
  new Uint8Array(await (await fetch(address)).arrayBuffer());

async function draw(request: PaperRequest): Promise<PaperAnswer> {
  const { id, plan, results, files, which } = request;
  const read = await readWholePlan(
    new Map([...files.map((f) => [f.name, f.bytes] as const), ...writePlan(plan)]),
  );
  if (!read.ok) return { id, kind: "refused", problems: read.problems };
  const context = { plan, site: read.site, tables, results: withoutHidden(results, plan.zones) };
  const set = paperSet(context, which);
  if (request.as === "pictures")
    return {
      id,
      kind: "pictures",
      drawn: {
        sheets: set.sheets,
        pages: set.pages.map((page) => ({ title: page.title, svg: toSvg(page) })),
      },
    };
  const fonts = { regular: await bytesOf(regular), semibold: await bytesOf(semibold) };
  return { id, kind: "pdf", bytes: await paperPdf(set, context, fonts) };
}

self.addEventListener("message", (event: MessageEvent<PaperRequest>) => {
  draw(event.data).then(
    (answer) => self.postMessage(answer),
    (error: unknown) => {
      const message = error instanceof Error ? error.message : String(error);
      self.postMessage({ id: event.data.id, kind: "broken", message } satisfies PaperAnswer);
    },
  );
});
