import type { PlanSnapshot } from "../api/types.ts";
import type { FileShelf } from "../desk/file-shelf.ts";
import { groundFile, groundInputs } from "@causey/io/ground";
import { createStore, type Store } from "../desk/store.ts";
import type { Scheme, TerrainAnswer, TerrainPicture, TerrainRequest } from "./terrain-protocol.ts";

export interface TerrainState {
  readonly picture: TerrainPicture | null;
  readonly message: string | null;
}

export interface TerrainSession extends Store<TerrainState> {
  /** Draws the plan's terrain unless just that is drawn already. */
  readonly show: (snapshot: PlanSnapshot, scheme: Scheme) => Promise<void>;
}

export interface TerrainPort {
  readonly postMessage: (request: TerrainRequest) => void;
  onmessage: ((event: MessageEvent<TerrainAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** Keeps the drawn terrain in step with the plan's terrain file, its units and the sheet's colours. */
export function createTerrainSession(startWorker: () => TerrainPort, shelf: FileShelf): TerrainSession {
  const store = createStore<TerrainState>({ picture: null, message: null });
  const sent = new Set<string>();
  let port: TerrainPort | null = null;
  let drawn = "";
  let lastId = 0;

  function open(): TerrainPort {
    if (port) return port;
    port = startWorker();
    port.onmessage = ({ data }) => {
      if (data.id !== lastId) return;
      if (data.ok) store.set({ picture: data.picture, message: null });
      else store.set({ picture: null, message: data.message });
    };
    port.onerror = (event) => store.set({ picture: null, message: event.message });
    return port;
  }

  return {
    ...store,
    show: async (snapshot, scheme) => {
      const { plan, files } = snapshot;
      const name = groundFile(plan.terrain);
      const file = files.find((f) => f.name === name);
      const sha256 = file?.sha256 ?? "";
      const wanted = `${sha256} ${JSON.stringify(groundInputs(plan))} ${plan.units} ${scheme}`;
      if (wanted === drawn) return;
      drawn = wanted;
      if (name !== null && !file) return store.set({ picture: null, message: `"${name}" is not there.` });
      const id = ++lastId;
      try {
        const [content] = await shelf(snapshot.id, file ? [file] : []);
        if (id !== lastId) return;
        const bytes = sent.has(sha256) || !content ? null : content.bytes;
        sent.add(sha256);
        open().postMessage({ id, plan, sha256, bytes, scheme });
      } catch (error) {
        drawn = "";
        store.set({ picture: null, message: error instanceof Error ? error.message : String(error) });
      }
    },
  };
}
