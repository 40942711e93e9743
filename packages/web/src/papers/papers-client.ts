import type { PaperAnswer, PaperRequest } from "./protocol.ts";

type Asked = Omit<PaperRequest, "id">;

let worker: Worker | null = null;
let lastId = 0;

/** Has sheets drawn beside the page, so that it stays at hand. A worker that breaks is ended, and the next call starts anew. */
export function askPapers(request: Asked): Promise<PaperAnswer> {
  worker ??= new Worker(new URL("./papers-worker.ts", import.meta.url), { type: "module", name: "papers" });
  const port = worker;
  const id = ++lastId;
  return new Promise((settle) => {
    const hear = ({ data }: MessageEvent<PaperAnswer>): void => {
      if (data.id !== id) return;
      port.removeEventListener("message", hear);
      port.removeEventListener("error", fail);
      settle(data);
    };
    const fail = (event: ErrorEvent): void => {
      port.terminate();
      if (worker === port) worker = null;
      settle({ id, kind: "broken", message: event.message || "The sheets could not be drawn." });
    };
    port.addEventListener("message", hear);
    port.addEventListener("error", fail);
    port.postMessage({ ...request, id });
  });
}
