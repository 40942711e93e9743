import type { Derive, FromWorker, NamedContent, ToWorker } from "./protocol.ts";

const REPORT_EVERY_MS = 60;

/** The worker's side of the protocol: keeps file contents by hash, runs one derivation per request, hears cancels. */
export function answerDerive(
  derive: Derive,
  post: (message: FromWorker) => void,
  now: () => number,
): (message: ToWorker) => void {
  const contents = new Map<string, Uint8Array>();
  const cancelled = new Set<number>();

  async function run(id: number, message: Extract<ToWorker, { type: "derive" }>): Promise<void> {
    let reported = -Infinity;
    try {
      const outcome = await derive(
        {
          plan: message.plan,
          files: filesOf(contents, message.files),
          ...(message.check === undefined ? {} : { check: message.check }),
        },
        {
          cancelled: () => cancelled.has(id),
          report: (progress) => {
            if (now() - reported < REPORT_EVERY_MS) return;
            reported = now();
            post({ type: "progress", id, progress });
          },
        },
      );
      post({ type: "outcome", id, outcome });
    } catch (error) {
      post({ type: "broken", id, message: error instanceof Error ? error.message : String(error) });
    } finally {
      cancelled.delete(id);
    }
  }

  return (message) => {
    if (message.type === "keep") contents.set(message.sha256, message.bytes);
    else if (message.type === "cancel") cancelled.add(message.id);
    else void run(message.id, message);
  };
}

function filesOf(
  contents: ReadonlyMap<string, Uint8Array>,
  named: readonly NamedContent[],
): Map<string, Uint8Array> {
  return new Map(
    named.flatMap(({ name, sha256 }) => {
      const bytes = contents.get(sha256);
      return bytes ? [[name, bytes] as const] : [];
    }),
  );
}
