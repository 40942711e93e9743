import "./theme/sheets.ts";
import { MantineProvider } from "@mantine/core";
import { createRoot } from "react-dom/client";
import { createPlanStore } from "./api/client.ts";
import { createDeriveSession } from "./desk/derive-session.ts";
import { connectDesk, DeskContext, type Desk } from "./desk/desk.ts";
import { createFileShelf } from "./desk/file-shelf.ts";
import { createPlanSession } from "./desk/plan-session.ts";
import { createRouter } from "./desk/route.ts";
import { createSelection } from "./desk/selection.ts";
import { App } from "./frame/app.tsx";
import { createPhotoSession } from "./map/photo-session.ts";
import { createTerrainSession } from "./map/terrain-session.ts";
import { theme } from "./theme/theme.ts";
import { createDeriveClient } from "./worker/derive-client.ts";

const plans = createPlanStore("api", (address, init) => fetch(address, init));
const shelf = createFileShelf(plans);
const deriveClient = createDeriveClient(
  () => new Worker(new URL("./worker/derive-worker.ts", import.meta.url), { type: "module", name: "derive" }),
);
const desk: Desk = {
  plans,
  plan: createPlanSession(plans),
  shelf,
  derive: createDeriveSession(deriveClient, shelf),
  terrain: createTerrainSession(
    () =>
      new Worker(new URL("./map/terrain-worker.ts", import.meta.url), { type: "module", name: "terrain" }),
    shelf,
  ),
  photo: createPhotoSession(
    () => new Worker(new URL("./map/photo-worker.ts", import.meta.url), { type: "module", name: "photo" }),
    shelf,
  ),
  selection: createSelection(),
  router: createRouter(window),
};
connectDesk(desk);

createRoot(document.getElementById("root")!).render(
  <MantineProvider theme={theme} defaultColorScheme="auto" withCssVariables={false} withGlobalClasses={false}>
    <DeskContext value={desk}>
      <App />
    </DeskContext>
  </MantineProvider>,
);
