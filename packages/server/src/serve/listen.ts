import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { inputProblem, ProblemError } from "@causey/engine/formula";
import { createAdaptorServer } from "@hono/node-server";

export interface Listening {
  readonly port: number;
  readonly close: () => Promise<void>;
}

type Answer = (request: Request) => Response | Promise<Response>;

/**
 * Listens on this machine alone (127.0.0.1).
 *
 * port    0 for any free one
 * answer  gets the port once it is known
 * Throws `ProblemError` when the port is taken or not allowed.
 */
export async function listen(port: number, answer: (port: number) => Answer): Promise<Listening> {
  let current: Answer = () => new Response(null, { status: 503 });
  const server = createAdaptorServer({ fetch: (request) => current(request) }) as Server;
  await new Promise<void>((resolve, reject) => {
    server.once("error", (error) => reject(portProblem(port, error)));
    server.listen(port, "127.0.0.1", resolve);
  });
  const given = (server.address() as AddressInfo).port;
  current = answer(given);
  return { port: given, close: () => close(server) };
}

/** How long answers that are under way may take when the server is stopped [ms]. */
const LAST_ANSWERS_MS = 2000;

function close(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const cut = setTimeout(() => server.closeAllConnections(), LAST_ANSWERS_MS);
    server.close(() => {
      clearTimeout(cut);
      resolve();
    });
    server.closeIdleConnections();
  });
}

function portProblem(port: number, error: Error): Error {
  const code = "code" in error ? error.code : "";
  const mend = "Give another with --port, or 0 for any free one.";
  if (code === "EADDRINUSE")
    return new ProblemError([inputProblem("port", port, "another program listens on this port", mend)]);
  if (code === "EACCES")
    return new ProblemError([inputProblem("port", port, "this port is not open to you", mend)]);
  return error;
}
