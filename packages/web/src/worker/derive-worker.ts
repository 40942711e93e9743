import { answerDerive } from "./answer-derive.ts";
import { derive } from "./derive-source.ts";
import type { ToWorker } from "./protocol.ts";

const answer = answerDerive(
  derive,
  (message) => self.postMessage(message),
  () => performance.now(),
);
self.addEventListener("message", (event: MessageEvent<ToWorker>) => answer(event.data));
