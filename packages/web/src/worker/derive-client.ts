import type { Progress } from "@causey/engine/formula";
import type { Plan } from "@causey/engine/plan";
import type { DeriveOutcome, FromWorker, NamedContent, ToWorker } from "./protocol.ts";

/** The part of a Worker that is needed here. */
export interface WorkerPort {
  readonly postMessage: (message: ToWorker) => void;
  readonly terminate: () => void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

export interface DeriveRequest {
  readonly plan: Plan;
  readonly files: readonly (NamedContent & { readonly bytes: Uint8Array })[];
  readonly check?: string;
}

export interface DeriveClient {
  /** Starts a derivation; an earlier one is cancelled first. Rejects when the worker breaks. */
  readonly derive: (request: DeriveRequest, report: (p: Progress) => void) => Promise<DeriveOutcome>;
  readonly cancel: () => void;
}

interface Running {
  readonly id: number;
  readonly report: (p: Progress) => void;
  readonly settle: (outcome: DeriveOutcome) => void;
  readonly fail: (error: Error) => void;
}

/** How long a worker may take to hear a cancel before it is ended and a fresh one started. */
const PATIENCE_MS = 1500;

/** The page's side of the protocol: request ids, progress, cancel, and a fresh worker when one does not listen. */
export function createDeriveClient(startWorker: () => WorkerPort): DeriveClient {
  let port: WorkerPort | null = null;
  let held = new Set<string>();
  let running: Running | null = null;
  let lastId = 0;

  function end(): void {
    port?.terminate();
    port = null;
    held = new Set();
  }

  function open(): WorkerPort {
    if (port) return port;
    const started = startWorker();
    started.onmessage = ({ data }) => hear(data);
    started.onerror = (event) => {
      const broken = running;
      running = null;
      end();
      broken?.fail(new Error(event.message || "The worker could not be started."));
    };
    port = started;
    return started;
  }

  function hear(message: FromWorker): void {
    if (!running || message.id !== running.id) return;
    if (message.type === "progress") return running.report(message.progress);
    const { settle, fail } = running;
    running = null;
    if (message.type === "outcome") settle(message.outcome);
    else fail(new Error(message.message));
  }

  function cancel(): void {
    if (!running || !port) return;
    const { id, settle } = running;
    port.postMessage({ type: "cancel", id });
    setTimeout(() => {
      if (running?.id !== id) return;
      running = null;
      end();
      settle({ ok: false, cancelled: true });
    }, PATIENCE_MS);
  }

  function replace(): void {
    if (!running || !port) return;
    port.postMessage({ type: "cancel", id: running.id });
    running.settle({ ok: false, cancelled: true });
    running = null;
  }

  return {
    cancel,
    derive: ({ plan, files, check }, report) => {
      replace();
      const to = open();
      for (const { sha256, bytes } of files) {
        if (held.has(sha256)) continue;
        to.postMessage({ type: "keep", sha256, bytes });
        held.add(sha256);
      }
      const id = ++lastId;
      return new Promise((settle, fail) => {
        running = { id, report, settle, fail };
        to.postMessage({
          type: "derive",
          id,
          plan,
          files: files.map(({ name, sha256 }) => ({ name, sha256 })),
          ...(check === undefined ? {} : { check }),
        });
      });
    },
  };
}
