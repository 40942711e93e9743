import type { Problem } from "@causey/engine/formula";
import {
  StoreError,
  type Change,
  type ChangeAnswer,
  type FileEntry,
  type PlanEntry,
  type PlanSnapshot,
  type PlanStore,
} from "./types.ts";

type Fetch = (address: string, init?: RequestInit) => Promise<Response>;

/** The store of plans behind the server's address. Signed in by a cookie that the server set. */
export function createPlanStore(base: string, fetchFrom: Fetch): PlanStore {
  const at = (id: string, rest = ""): string => `${base}/plans/${encodeURIComponent(id)}${rest}`;
  const ask = (address: string, init?: RequestInit): Promise<Response> => answer(fetchFrom, address, init);
  return {
    list: async () => {
      const body = await json<readonly PlanEntry[] | { plans: readonly PlanEntry[] }>(
        await ask(`${base}/plans`),
      );
      return "plans" in body ? body.plans : body;
    },
    load: async (id) => ({ ...(await json<Omit<PlanSnapshot, "id">>(await ask(at(id)))), id }),
    file: async (id, name) =>
      new Uint8Array(await (await ask(at(id, `/files/${encodeURIComponent(name)}`))).arrayBuffer()),
    change: async (id, revision, change) => {
      const response = await ask(at(id, changePath(change)), post(changeBody(revision, change)));
      return changeAnswer(response);
    },
    open: async (archive) => {
      const response = await ask(`${base}/plans`, {
        method: "POST",
        headers: { "content-type": "application/zip" },
        body: archive as Uint8Array<ArrayBuffer>,
      });
      if (!response.ok) return { kind: "refused", problems: await problemsOf(response) };
      return { kind: "opened", id: (await json<{ id: string }>(response)).id };
    },
    addFile: async (id, name, bytes) => {
      const response = await ask(at(id, `/files/${encodeURIComponent(name)}`), {
        method: "PUT",
        headers: { "content-type": "application/octet-stream" },
        body: bytes as Uint8Array<ArrayBuffer>,
      });
      if (!response.ok) return { kind: "refused", problems: await problemsOf(response) };
      return { kind: "kept", file: await json<FileEntry>(response) };
    },
    archiveAddress: (id) => at(id, "/archive"),
  };
}

const changePath = (change: Change): string => (change.kind === "edit" ? "/edits" : `/${change.kind}`);

const changeBody = (base: number, change: Change): object =>
  change.kind === "edit" ? { base, edit: change.edit } : { base };

const post = (body: object): RequestInit => ({
  method: "POST",
  headers: { "content-type": "application/json" },
  body: JSON.stringify(body),
});

async function changeAnswer(response: Response): Promise<ChangeAnswer> {
  if (response.status === 409) return { kind: "older-base", ...(await json<OlderBase>(response)) };
  if (!response.ok) return { kind: "refused", problems: await problemsOf(response) };
  return { kind: "saved", saved: await json(response) };
}

type OlderBase = Omit<Extract<ChangeAnswer, { kind: "older-base" }>, "kind">;

const problemsOf = async (response: Response): Promise<readonly Problem[]> =>
  (await json<{ problems: readonly Problem[] }>(response)).problems;

/** Answers that say in words what is wrong with what was sent. */
const readable = new Set([400, 409, 413, 415, 422, 507]);

async function answer(fetchFrom: Fetch, address: string, init?: RequestInit): Promise<Response> {
  let response: Response;
  try {
    response = await fetchFrom(address, { credentials: "same-origin", ...init });
  } catch (error) {
    throw new StoreError("no-answer", "Causey's server does not answer.", error);
  }
  if (response.ok || readable.has(response.status)) return response;
  if (response.status === 401 || response.status === 403)
    throw new StoreError("signed-out", "The server does not know this browser.");
  if (response.status === 404) throw new StoreError("not-found", "The server has no such plan or file.");
  throw new StoreError("unexpected", `The server answered ${response.status} to ${address}.`);
}

async function json<T>(response: Response): Promise<T> {
  try {
    return (await response.json()) as T;
  } catch (error) {
    throw new StoreError("unexpected", "The server's answer could not be read.", error);
  }
}
