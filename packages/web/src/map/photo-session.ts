import type { PlanSnapshot } from "../api/types.ts";
import type { FileShelf } from "../desk/file-shelf.ts";
import { createStore, type Store } from "../desk/store.ts";
import type { PhotoAnswer, PhotoPicture, PhotoRequest } from "./photo-worker.ts";

/** The photo under the map as it is drawn; null while there is none. */
export interface PhotoState {
  readonly picture: PhotoPicture | null;
  readonly message: string | null;
}

export interface PhotoSession extends Store<PhotoState> {
  /** Draws the plan's photo unless just that is drawn already. */
  readonly show: (snapshot: PlanSnapshot) => Promise<void>;
}

export interface PhotoPort {
  readonly postMessage: (request: PhotoRequest) => void;
  onmessage: ((event: MessageEvent<PhotoAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

const NONE: PhotoState = { picture: null, message: null };

/** Keeps the drawn photo in step with the plan's. */
export function createPhotoSession(startWorker: () => PhotoPort, shelf: FileShelf): PhotoSession {
  const store = createStore<PhotoState>(NONE);
  let port: PhotoPort | null = null;
  let drawn = "";
  let lastId = 0;

  const fail = (message: string): void => store.set({ picture: null, message });
  function open(): PhotoPort {
    if (port) return port;
    port = startWorker();
    port.onmessage = ({ data }) => {
      if (data.id !== lastId) return;
      if (data.ok) store.set({ picture: data.picture, message: null });
      else fail(data.message);
    };
    port.onerror = (event) => fail(event.message);
    return port;
  }

  return {
    ...store,
    show: async ({ id: plan_id, plan, files }) => {
      const { photo, crs } = plan;
      const entry = photo && files.find((f) => f.name === photo.file);
      const wanted =
        photo === null ? "" : JSON.stringify([entry?.sha256, photo.world, photo.crs_confirmed, crs]);
      if (wanted === drawn) return;
      drawn = wanted;
      const id = ++lastId;
      if (photo === null) return store.set(NONE);
      if (!entry) return fail(`"${photo.file}" is not there.`);
      try {
        const [content] = await shelf(plan_id, [entry]);
        if (id !== lastId) return;
        open().postMessage({ id, photo, crs, bytes: content!.bytes });
      } catch (error) {
        drawn = "";
        fail(error instanceof Error ? error.message : String(error));
      }
    },
  };
}
